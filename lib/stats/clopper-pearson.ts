import { betaQuantile, betaUpperQuantile } from "./distributions/beta";
import { requireShare } from "./shares/check-share";

/**
 * A share x/n with the exact interval of Clopper and Pearson, from quantiles of the beta distribution.
 * Clopper CJ, Pearson ES. Biometrika 1934;26:404-413.
 * @throws RangeError without cases, when x is above n, or with a confidence outside 0 to 1
 * @example clopperPearson({ x: 0, n: 20 }).upper.toFixed(4) // => "0.1684"
 */
export function clopperPearson({ x, n, confidence = 0.95 }: { x: number; n: number; confidence?: number }) {
  requireShare("clopperPearson", x, n, confidence);
  const tail = (1 - confidence) / 2;
  return {
    estimate: x / n,
    se: null,
    df: null,
    lower: x === 0 ? 0 : betaQuantile(tail, x, n - x + 1),
    upper: x === n ? 1 : betaUpperQuantile(tail, x + 1, n - x),
    x,
    n,
    patients: null,
    method: "Clopper–Pearson exact interval",
    notes: [],
  } as const;
}
