import { Matrix } from "ml-matrix";
import { product, times } from "./small";
import { symmetricPower } from "./symmetric-power";

/**
 * One patient's part in CR2. With g(a) the patient's vector of a contrast a, adjusted so that its square is unbiased under the working model:
 * score · a = g(a) · residuals, a′ square a = |g(a)|², cross a = Qᵀ g(a).
 */
export interface Adjusted {
  readonly score: Float64Array;
  readonly square: Float64Array;
  readonly cross: Float64Array;
}

/**
 * Equal working variances within the patient: g = (I − QQᵀ)^(−1/2) Q a = Q (I − QᵀQ)^(−1/2) a,
 * so the adjustment, m × m by definition, needs the p × p Gram matrix only.
 */
export function adjustedByGram(gram: Float64Array, score: Float64Array, p: number): Adjusted {
  const root = symmetricPower(
    gram.map((value, place) => (place % (p + 1) === 0 ? 1 : 0) - value),
    p,
    -0.5,
    1,
  );
  const cross = product(gram, root, p);
  return { score: times(root, score), square: product(root, cross, p), cross };
}

/**
 * Working variances θ that differ within the patient: g = θ [θ (I − QQᵀ) θ]^(−1/2) Q a, m × m in the patient's own rows.
 * Several symmetric roots would be unbiased; this is the one of Pustejovsky and Tipton 2018 with D = √θ.
 */
export function adjustedByRows(lines: readonly ArrayLike<number>[], residuals: Float64Array, theta: Float64Array): Adjusted {
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
  return {
    score: Float64Array.from(turned.mmul(Matrix.columnVector(residuals)).to1DArray()),
    square: Float64Array.from(turned.mmul(vectors).to1DArray()),
    cross: Float64Array.from(q.transpose().mmul(vectors).to1DArray()),
  };
}
