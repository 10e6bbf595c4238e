import { gammaQuantile } from "../distributions/gamma";

/** Exact limits of the mean of a Poisson count. Garwood F. Biometrika 1936;28:437-442. */
export function exactCountLimits(count: number, confidence: number): { lower: number; upper: number } {
  const tail = (1 - confidence) / 2;
  return { lower: count === 0 ? 0 : gammaQuantile(tail, count), upper: gammaQuantile(1 - tail, count + 1) };
}
