import betainc from "@stdlib/math-base-special-betainc";

/**
 * P(X > x) of the beta distribution for x between 0 and 1. The package turns to 1 − x for an upper tail, which drops the digits of a small x:
 * where the lower tail is the smaller one it is taken instead.
 */
export function betaUpperOf(x: number, a: number, b: number): number {
  const lower = betainc(x, a, b);
  return lower < 0.5 ? 1 - lower : betainc(x, a, b, true, true);
}
