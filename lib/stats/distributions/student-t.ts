import betainc from "@stdlib/math-base-special-betainc";
import betaincinv from "@stdlib/math-base-special-betaincinv";
import { requireProbability } from "../require";
import { betaUpperOf } from "./beta-upper";
import { normalQuantile, normalTwoSided } from "./normal";

/** P(|T| ≥ |t|) of Student's t; df may be fractional or Infinity (the normal). */
export function tTwoSided(t: number, df: number): number {
  requireDf("tTwoSided", df);
  if (df === Infinity) return normalTwoSided(t);
  const square = t * t;
  if (square === Infinity) return 0;
  return square < df ? betaUpperOf(square / (df + square), 0.5, df / 2) : betainc(df / (df + square), df / 2, 0.5);
}

/** P(T > t), from the small tail. */
export function tUpper(t: number, df: number): number {
  const tail = tTwoSided(t, df) / 2;
  return t >= 0 ? tail : 1 - tail;
}

/** P(T ≤ t), from the small tail. */
export function tCdf(t: number, df: number): number {
  return tUpper(-t, df);
}

/**
 * The t with P(T ≤ t) = p.
 * @throws RangeError when p lies outside 0 to 1 or df is not above zero
 * @example tQuantile(0.975, 10).toFixed(4) // => "2.2281"
 */
export function tQuantile(p: number, df: number): number {
  requireProbability("tQuantile", "p", p);
  requireDf("tQuantile", df);
  if (df === Infinity) return normalQuantile(p);
  if (p === 0.5) return 0;
  return p < 0.5 ? -upperQuantile(2 * p, df) : upperQuantile(2 * (1 - p), df);
}

/** The t ≥ 0 with P(|T| ≥ t) = twoSided. */
function upperQuantile(twoSided: number, df: number): number {
  if (twoSided === 0) return Infinity;
  const x = betaincinv(twoSided, df / 2, 0.5);
  if (x < 0.5) return Math.sqrt((df * (1 - x)) / x);
  const y = betaincinv(twoSided, 0.5, df / 2, true); // y = 1 − x with its own digits
  return Math.sqrt((df * y) / (1 - y));
}

function requireDf(caller: string, df: number): void {
  if (!(df > 0)) throw new RangeError(`${caller} requires degrees of freedom above zero, received ${df}`);
}
