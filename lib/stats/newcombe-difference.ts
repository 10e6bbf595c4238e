import { requireShare } from "./shares/check-share";
import { newcombeLimits } from "./shares/newcombe-limits";
import { scoreInterval } from "./shares/score-interval";

/**
 * Difference of two independent shares, x1/n1 − x2/n2, with Newcombe's hybrid score interval.
 * Newcombe RG. Stat Med 1998;17:873-890, method 10 (no continuity correction).
 * @throws RangeError without cases in a group, when x is above n, or with a confidence outside 0 to 1
 * @example newcombeDifference({ x1: 56, n1: 70, x2: 48, n2: 80 }).lower.toFixed(4) // => "0.0524"
 */
export function newcombeDifference({
  x1,
  n1,
  x2,
  n2,
  confidence = 0.95,
}: {
  x1: number;
  n1: number;
  x2: number;
  n2: number;
  confidence?: number;
}) {
  requireShare("newcombeDifference", x1, n1, confidence);
  requireShare("newcombeDifference", x2, n2, confidence);
  const first = { estimate: x1 / n1, ...scoreInterval(x1 / n1, n1, confidence) };
  const second = { estimate: x2 / n2, ...scoreInterval(x2 / n2, n2, confidence) };
  return {
    estimate: first.estimate - second.estimate,
    se: null,
    df: null,
    ...newcombeLimits(first, second),
    n: n1 + n2,
    patients: null,
    method: "Newcombe hybrid score interval of a difference of shares",
    convention: "method 10, without continuity correction",
    notes: [],
  } as const;
}
