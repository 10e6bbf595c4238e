import { noncentralTUpper } from "./distributions/noncentral-t";
import { normalQuantile } from "./distributions/normal";
import { tQuantile } from "./distributions/student-t";
import { requireConfidence, requirePositive } from "./require";

/**
 * The difference that a comparison with this standard error and these df would find with the given power at 5 % (two-sided, one side counted).
 * Solves P(T > t | noncentrality δ/se) = power for δ, as R's power.t.test does. It belongs to planning: after the fact the interval says more.
 * Cohen J. Statistical Power Analysis, 2nd ed., 1988, ch. 2.
 * @param se standard error of the difference, in its unit
 * @param df Infinity for a normal statistic
 * @throws RangeError when se or df isn't above zero, df is below 1, or power isn't above half the level and below 1
 * @example smallestDetectableDifference({ se: 1, df: Infinity }).estimate.toFixed(3) // => "2.802"
 */
export function smallestDetectableDifference({
  se,
  df,
  power = 0.8,
  confidence = 0.95,
}: {
  se: number;
  df: number;
  power?: number;
  confidence?: number;
}) {
  requirePositive("smallestDetectableDifference", "se", se);
  if (!(df >= 1)) throw new RangeError(`smallestDetectableDifference requires at least one degree of freedom, received ${df}`);
  requireConfidence("smallestDetectableDifference", confidence);
  const tail = (1 - confidence) / 2;
  if (!(power > tail && power < 1)) {
    throw new RangeError(`smallestDetectableDifference requires a power between ${tail} and 1, received ${power}`);
  }
  const noncentrality =
    df === Infinity ? normalQuantile(1 - tail) + normalQuantile(power) : noncentralityFor(tQuantile(1 - tail, df), df, power);
  return {
    estimate: noncentrality * se,
    se,
    df,
    power,
    confidence,
    method: "smallest detectable difference, noncentral t",
    notes: [],
  } as const;
}

/** By halving: power rises with the noncentrality. */
function noncentralityFor(critical: number, df: number, power: number): number {
  let [low, high] = [0, 36.9];
  if (noncentralTUpper(critical, df, high) < power) {
    throw new RangeError(`smallestDetectableDifference requires a power that ${df} degrees of freedom can reach, received ${power}`);
  }
  while (high - low > 1e-13 * high) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (noncentralTUpper(critical, df, middle) < power) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
