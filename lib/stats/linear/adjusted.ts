import { Matrix } from "ml-matrix";
import { rootNearOne } from "./root-near-one";
import { dotAt } from "./small";
import { symmetricPower } from "./symmetric-power";

/**
 * What CR2 needs of a fit, patient by patient, in the coordinates of the orthonormal columns Q of the (weighted) design.
 * Nothing grows with the square of all rows. With g(a) a patient's vector of a contrast a, adjusted so that its square is unbiased under the
 * working model: score · a = g(a) · residuals, a′ square a = |g(a)|², cross a = Qᵀ g(a). All patients stand in one array each; an array a
 * patient would be hundreds of thousands of them.
 */
export interface Parts {
  readonly p: number;
  /** p a patient. */
  readonly scores: Float64Array;
  /** p × p by rows a patient, as are the crosses. */
  readonly squares: Float64Array;
  readonly crosses: Float64Array;
}

/**
 * Equal working variances within the patient: g = (I − QQᵀ)^(−1/2) Q a = Q (I − QᵀQ)^(−1/2) a,
 * so the adjustment, m × m by definition, needs the p × p Gram matrix only.
 * @param patient whose part of the fit is written
 * @param grams p × p by rows a patient
 * @param sums Qᵀ residuals, p a patient
 */
export function adjustByGram(
  { p, scores, squares, crosses }: Parts,
  patient: number,
  grams: ArrayLike<number>,
  sums: ArrayLike<number>,
): void {
  const [vector, matrix] = [patient * p, patient * p * p];
  const root = rootOfLeft(grams, matrix, p);
  for (let i = 0; i < p; i++) {
    scores[vector + i] = dotAt(root, i * p, sums, vector, p);
    for (let j = 0; j < p; j++) crosses[matrix + i * p + j] = rowTimesColumn(grams, matrix + i * p, root, j, p);
  }
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < p; j++) {
      let sum = 0;
      for (let k = 0; k < p; k++) sum += (root[i * p + k] as number) * (crosses[matrix + k * p + j] as number);
      squares[matrix + i * p + j] = sum;
    }
  }
}

/** (I − G)^(−1/2). */
function rootOfLeft(grams: ArrayLike<number>, at: number, p: number): Float64Array {
  const near = rootNearOne(grams, at, p);
  if (near) return near;
  const left = new Float64Array(p * p);
  for (let place = 0; place < left.length; place++) left[place] = (place % (p + 1) === 0 ? 1 : 0) - (grams[at + place] as number);
  return symmetricPower(left, p, -0.5, 1);
}

/** Row of p numbers from place `at` on, times a column of a p × p matrix by rows. */
function rowTimesColumn(left: ArrayLike<number>, at: number, right: Float64Array, column: number, p: number): number {
  let sum = 0;
  for (let k = 0; k < p; k++) sum += (left[at + k] as number) * (right[k * p + column] as number);
  return sum;
}

/**
 * Working variances θ that differ within the patient: g = θ [θ (I − QQᵀ) θ]^(−1/2) Q a, m × m in the patient's own rows.
 * Several symmetric roots would be unbiased; this is the one of Pustejovsky and Tipton 2018 with D = √θ.
 */
export function adjustByRows(
  { p, scores, squares, crosses }: Parts,
  patient: number,
  {
    lines,
    residuals,
    theta,
  }: { readonly lines: readonly ArrayLike<number>[]; readonly residuals: Float64Array; readonly theta: Float64Array },
): void {
  const m = lines.length;
  const largest = theta.reduce((most, value) => Math.max(most, value), 0);
  const scaled = theta.map((value) => value / largest);
  const q = new Matrix(lines);
  const hat = q.mmul(q.transpose());
  const inside = new Float64Array(m * m);
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < m; j++) inside[i * m + j] = (scaled[i] as number) * ((i === j ? 1 : 0) - hat.get(i, j)) * (scaled[j] as number);
  }
  const root = Matrix.from1DArray(m, m, symmetricPower(inside, m, -0.5, 1));
  const vectors = Matrix.diag(Array.from(scaled)).mmul(root).mmul(q); // g of each unit contrast, m × p
  const turned = vectors.transpose();
  scores.set(turned.mmul(Matrix.columnVector(residuals)).to1DArray(), patient * p);
  squares.set(turned.mmul(vectors).to1DArray(), patient * p * p);
  crosses.set(q.transpose().mmul(vectors).to1DArray(), patient * p * p);
}
