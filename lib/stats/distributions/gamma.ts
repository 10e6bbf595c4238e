import gammainc from "@stdlib/math-base-special-gammainc";
import gammaincinv from "@stdlib/math-base-special-gammaincinv";
import { requirePositive, requireProbability } from "../require";

/** P(X ≤ x) of the gamma distribution of scale 1. */
export function gammaCdf(x: number, shape: number): number {
  requirePositive("gammaCdf", "shape", shape);
  return x <= 0 ? 0 : gammainc(x, shape);
}

/** P(X > x) of the gamma distribution of scale 1, computed as such. */
export function gammaUpper(x: number, shape: number): number {
  requirePositive("gammaUpper", "shape", shape);
  return x <= 0 ? 1 : gammainc(x, shape, true, true);
}

/** The x with P(X ≤ x) = p, scale 1. */
export function gammaQuantile(p: number, shape: number): number {
  requireProbability("gammaQuantile", "p", p);
  requirePositive("gammaQuantile", "shape", shape);
  return gammaincinv(p, shape);
}

/**
 * P(χ² > x).
 * @example chiSquareUpper(3.841459, 1).toFixed(6) // => "0.050000"
 */
export function chiSquareUpper(x: number, df: number): number {
  return gammaUpper(x / 2, df / 2);
}

/** The x with P(χ² ≤ x) = p. */
export function chiSquareQuantile(p: number, df: number): number {
  return 2 * gammaQuantile(p, df / 2);
}
