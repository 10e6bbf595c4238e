import { normalDensity, normalUpper } from "../distributions";

/** From here on the tail's own series is exact to the last digit, and further out the tail itself underflows. */
const seriesFrom = 35;

/** log P(Z > z), finite for every finite z. */
export function logUpper(z: number): number {
  if (z < seriesFrom) return Math.log(normalUpper(z));
  return -0.5 * z * z - 0.5 * Math.log(2 * Math.PI) - Math.log(z) + Math.log(tailSeries(z));
}

/**
 * Density over upper tail, the hazard of the standard normal; close to z far out.
 * Abramowitz, Stegun 1964, 26.2.12 for the series of the tail.
 */
export function normalHazard(z: number): number {
  if (z < seriesFrom) return normalDensity(z) / normalUpper(z);
  return z / tailSeries(z);
}

/** z·P(Z > z)/density = 1 − 1/z² + 3/z⁴ − 15/z⁶ + 105/z⁸ − … */
function tailSeries(z: number): number {
  const u = 1 / (z * z);
  return 1 - u * (1 - 3 * u * (1 - 5 * u * (1 - 7 * u * (1 - 9 * u))));
}
