import { mean, sampleStandardDeviation } from "simple-statistics";
import { powerOfTwoScale } from "./scale";

/** The arithmetic mean, corrected for rounding; null without values. */
export function meanOf(values: readonly number[]): number | null {
  return values.length === 0 ? null : mean([...values]);
}

/**
 * Sample standard deviation (n − 1); null below two values.
 * @example sampleDeviation([2, 4, 4, 4, 5, 5, 7, 9])?.toFixed(4) // => "2.1381"
 */
export function sampleDeviation(values: readonly number[]): number | null {
  if (values.length < 2) return null;
  const scale = powerOfTwoScale(values);
  return sampleStandardDeviation(values.map((value) => value / scale)) * scale;
}
