import { EigenvalueDecomposition, Matrix } from "ml-matrix";

/** An eigenvalue below this share of the matrix's size is zero. */
const ZERO = 1e-12;

/**
 * Power of a symmetric matrix by its eigenvalues; directions with eigenvalue zero (or below, by rounding) get 0, as in a pseudo-inverse.
 * @param matrix p × p by rows
 * @param size what counts as a large eigenvalue of such a matrix
 */
export function symmetricPower(matrix: Float64Array, p: number, power: number, size: number): Float64Array {
  const raised = (eigenvalue: number) => (eigenvalue > ZERO * size ? eigenvalue ** power : 0);
  if (isDiagonal(matrix, p)) return matrix.map((value, place) => (place % (p + 1) === 0 ? raised(value) : 0));
  const eigen = p <= MOST_TURNED ? turned(matrix, p) : decomposed(matrix, p);
  const result = new Float64Array(p * p);
  for (let k = 0; k < p; k++) {
    const factor = raised(eigen.values[k] as number);
    for (let i = 0; i < p; i++) {
      const left = factor * (eigen.vectors[i * p + k] as number);
      for (let j = 0; j < p; j++) result[i * p + j] = (result[i * p + j] as number) + left * (eigen.vectors[j * p + k] as number);
    }
  }
  return result;
}

/** Eigenvalues, and the eigenvectors as columns of a p × p matrix by rows. */
interface Eigen {
  readonly values: ArrayLike<number>;
  readonly vectors: Float64Array;
}

/** Above this size tridiagonal form is the shorter way. */
const MOST_TURNED = 8;
const MOST_SWEEPS = 30;
/** What is turned, its eigenvectors and eigenvalues: written over from one matrix to the next, since there are a hundred thousand. */
const a = new Float64Array(MOST_TURNED ** 2);
const vectors = new Float64Array(MOST_TURNED ** 2);
const values = new Float64Array(MOST_TURNED);

/**
 * Cyclic Jacobi: each turn makes one pair of entries off the diagonal zero, and what is left there falls quadratically. There is one such
 * matrix a patient, small and near the identity: it takes two or three sweeps. Golub GH, Van Loan CF. Matrix Computations, 4th ed., 2013, section 8.5.
 */
function turned(matrix: Float64Array, p: number): Eigen {
  a.set(matrix);
  vectors.fill(0, 0, p * p);
  for (let i = 0; i < p; i++) vectors[i * (p + 1)] = 1;
  for (let sweep = 0; sweep < MOST_SWEEPS && !isDiagonal(a, p); sweep++)
    for (let i = 0; i < p - 1; i++) for (let j = i + 1; j < p; j++) turn(p, i, j);
  for (let i = 0; i < p; i++) values[i] = a[i * (p + 1)] as number;
  return { values, vectors };
}

/** One turn in the plane of i and j, by the smaller of the two angles. */
function turn(p: number, i: number, j: number): void {
  const off = a[i * p + j] as number;
  const [one, other] = [a[i * (p + 1)] as number, a[j * (p + 1)] as number];
  // beside the diagonal it is lost in rounding
  if (Math.abs(off) <= Number.EPSILON * 0.01 * Math.min(Math.abs(one), Math.abs(other))) {
    a[i * p + j] = a[j * p + i] = 0;
    return;
  }
  const tau = (other - one) / (2 * off);
  const tangent = (tau >= 0 ? 1 : -1) / (Math.abs(tau) + Math.hypot(1, tau));
  const cosine = 1 / Math.hypot(1, tangent);
  const sine = tangent * cosine;
  for (let k = 0; k < p; k++) mix(a, k * p + i, k * p + j, cosine, sine);
  for (let k = 0; k < p; k++) mix(a, i * p + k, j * p + k, cosine, sine);
  for (let k = 0; k < p; k++) mix(vectors, k * p + i, k * p + j, cosine, sine);
  a[i * p + j] = a[j * p + i] = 0;
}

function mix(numbers: Float64Array, first: number, second: number, cosine: number, sine: number): void {
  const [one, other] = [numbers[first] as number, numbers[second] as number];
  numbers[first] = cosine * one - sine * other;
  numbers[second] = sine * one + cosine * other;
}

function decomposed(matrix: Float64Array, p: number): Eigen {
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(Matrix.from1DArray(p, p, matrix), { assumeSymmetric: true });
  return { values: realEigenvalues, vectors: Float64Array.from(eigenvectorMatrix.to1DArray()) };
}

function isDiagonal(matrix: Float64Array, p: number): boolean {
  for (let place = 0; place < p * p; place++) if (matrix[place] !== 0 && place % (p + 1) !== 0) return false;
  return true;
}
