import { tTwoSided } from "../distributions/student-t";
import type { Note } from "../notes";
import { noInterval, tInterval } from "../summary/t-interval";
import type { ClusteredFit } from "./clustered-fit";
import { cr2Covariance, directionOf, isSeen, satterthwaite } from "./cr2";

/** Estimate, error, df, interval and test of one contrast. */
export interface ContrastEstimate {
  readonly estimate: number;
  readonly se: number | null;
  readonly df: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly statistic: number | null;
  readonly p: number | null;
  readonly notes: readonly Note[];
}

/**
 * @param a the contrast in the coordinates of Q
 * @param scale multiplies the error, as it has multiplied the estimate
 */
export function contrastEstimate(
  fit: ClusteredFit,
  a: Float64Array,
  estimate: number,
  scale: number,
  confidence: number,
): ContrastEstimate {
  const direction = directionOf(fit, a);
  if (!isSeen(direction)) return withheld(estimate, { code: "not-estimable", because: "one patient alone determines it" });
  const se = Math.sqrt(cr2Covariance(fit, direction, direction)) * scale;
  const df = satterthwaite(direction);
  const statistic = se > 0 ? estimate / se : null;
  const p = statistic === null ? null : tTwoSided(statistic, df);
  return { estimate, se, df, ...tInterval(estimate, se, df, confidence), statistic, p, notes: [{ code: "clustered", df }] };
}

/** The estimate alone, with the reason why nothing stands beside it. */
export function withheld(estimate: number, note: Note): ContrastEstimate {
  return { estimate, ...noInterval, statistic: null, p: null, notes: [note] };
}
