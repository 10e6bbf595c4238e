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
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(Matrix.from1DArray(p, p, matrix), { assumeSymmetric: true });
  const result = new Float64Array(p * p);
  realEigenvalues.forEach((eigenvalue, k) => {
    const factor = raised(eigenvalue);
    for (let i = 0; i < p; i++) {
      const left = factor * eigenvectorMatrix.get(i, k);
      for (let j = 0; j < p; j++) result[i * p + j] = (result[i * p + j] as number) + left * eigenvectorMatrix.get(j, k);
    }
  });
  return result;
}

function isDiagonal(matrix: Float64Array, p: number): boolean {
  return matrix.every((value, place) => value === 0 || place % (p + 1) === 0);
}
