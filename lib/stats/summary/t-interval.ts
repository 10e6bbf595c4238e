import { tQuantile } from "../distributions/student-t";

/** estimate ± t(df) × se */
export function tInterval(estimate: number, se: number, df: number, confidence: number): { lower: number; upper: number } {
  const half = tQuantile(1 - (1 - confidence) / 2, df) * se;
  return { lower: estimate - half, upper: estimate + half };
}

/** The answer's fields when nothing can be said about precision. */
export const noInterval = { se: null, df: null, lower: null, upper: null } as const;
