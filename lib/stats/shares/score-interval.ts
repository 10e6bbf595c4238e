import { normalQuantile } from "../distributions/normal";

/**
 * Limits of the score interval for a share p seen on n cases; n may be fractional (an effective number).
 * A limit at 0 or 1 is exact when p is. Wilson EB. J Am Stat Assoc 1927;22:209-212.
 */
export function scoreInterval(p: number, n: number, confidence: number): { lower: number; upper: number } {
  const z = normalQuantile(1 - (1 - confidence) / 2);
  const square = (z * z) / n;
  const centre = p + square / 2;
  const half = z * Math.sqrt((p * (1 - p)) / n + square / (4 * n));
  return {
    lower: p === 0 ? 0 : Math.max(0, (centre - half) / (1 + square)),
    upper: p === 1 ? 1 : Math.min(1, (centre + half) / (1 + square)),
  };
}
