import erfc from "@stdlib/math-base-special-erfc";
import erfcinv from "@stdlib/math-base-special-erfcinv";
import { requireProbability } from "../require";

/** P(Z ≤ x) of the standard normal. From erfc, so a far lower tail keeps its digits. */
export function normalCdf(x: number): number {
  return 0.5 * erfc(-x / Math.SQRT2);
}

/** P(Z > x), computed as such: 1 − cdf would be 0 from x = 8.3 on. */
export function normalUpper(x: number): number {
  return 0.5 * erfc(x / Math.SQRT2);
}

/** P(|Z| ≥ |z|). */
export function normalTwoSided(z: number): number {
  return erfc(Math.abs(z) / Math.SQRT2);
}

/**
 * The x with P(Z ≤ x) = p.
 * @throws RangeError when p lies outside 0 to 1
 * @example normalQuantile(0.975).toFixed(6) // => "1.959964"
 */
export function normalQuantile(p: number): number {
  requireProbability("normalQuantile", "p", p);
  return p <= 0.5 ? -Math.SQRT2 * erfcinv(2 * p) : Math.SQRT2 * erfcinv(2 * (1 - p));
}

/** Density of the standard normal. */
export function normalDensity(x: number): number {
  return Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI);
}
