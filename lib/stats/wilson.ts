import { requireShare } from "./shares/check-share";
import { scoreInterval } from "./shares/score-interval";

/**
 * A share x/n with Wilson's score interval, without continuity correction.
 * Wilson EB. J Am Stat Assoc 1927;22:209-212; Newcombe RG. Stat Med 1998;17:857-872 (method 3).
 * @throws RangeError without cases, when x is above n, or with a confidence outside 0 to 1
 * @example wilson({ x: 1, n: 29 }).lower.toFixed(4) // => "0.0061"
 */
export function wilson({ x, n, confidence = 0.95 }: { x: number; n: number; confidence?: number }) {
  requireShare("wilson", x, n, confidence);
  return {
    estimate: x / n,
    se: null,
    df: null,
    ...scoreInterval(x / n, n, confidence),
    x,
    n,
    patients: null,
    method: "Wilson score interval",
    convention: "without continuity correction",
    notes: [],
  } as const;
}
