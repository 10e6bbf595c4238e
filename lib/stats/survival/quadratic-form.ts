import { cholesky, solveCholesky } from "./cholesky";

/**
 * uᵀV⁻¹u of a vector of group scores whose parts sum to zero: the last group is left out, which one doesn't matter.
 * Null when the rest has no variance (a group without anyone at risk, or too few patients).
 */
export function quadraticForm(score: Float64Array, variance: Float64Array): number | null {
  const k = score.length;
  const kept = k - 1;
  const inner = new Float64Array(kept * kept);
  for (let i = 0; i < kept; i++) for (let j = 0; j < kept; j++) inner[i * kept + j] = variance[i * k + j] as number;
  const factor = cholesky(inner, kept);
  if (factor === null) return null;
  const solved = solveCholesky(factor, score.subarray(0, kept));
  return solved.reduce((sum, value, i) => sum + value * (score[i] as number), 0);
}
