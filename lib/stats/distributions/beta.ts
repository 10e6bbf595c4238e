import betainc from "@stdlib/math-base-special-betainc";
import betaincinv from "@stdlib/math-base-special-betaincinv";
import { requirePositive, requireProbability } from "../require";
import { betaUpperOf } from "./beta-upper";

/** P(X ≤ x) of the beta distribution. */
export function betaCdf(x: number, a: number, b: number): number {
  requireShapes("betaCdf", a, b);
  if (x <= 0) return 0;
  return x >= 1 ? 1 : betainc(x, a, b);
}

/** P(X > x) of the beta distribution, computed as such. */
export function betaUpper(x: number, a: number, b: number): number {
  requireShapes("betaUpper", a, b);
  if (x <= 0) return 1;
  return x >= 1 ? 0 : betaUpperOf(x, a, b);
}

/**
 * The x with P(X ≤ x) = p.
 * @throws RangeError when p lies outside 0 to 1 or a shape is not above zero
 * @example betaQuantile(0.975, 1, 20).toFixed(4) // => "0.1684"
 */
export function betaQuantile(p: number, a: number, b: number): number {
  requireProbability("betaQuantile", "p", p);
  requireShapes("betaQuantile", a, b);
  return betaincinv(p, a, b);
}

/** The x with P(X > x) = p. */
export function betaUpperQuantile(p: number, a: number, b: number): number {
  requireProbability("betaUpperQuantile", "p", p);
  requireShapes("betaUpperQuantile", a, b);
  return betaincinv(p, a, b, true);
}

function requireShapes(caller: string, a: number, b: number): void {
  requirePositive(caller, "a", a);
  requirePositive(caller, "b", b);
}
