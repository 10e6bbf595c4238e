import betainc from "@stdlib/math-base-special-betainc";
import { betaUpperOf } from "./beta-upper";

/**
 * P(F > f) of Fisher's F on d1 and d2 degrees of freedom (fractional allowed).
 * @throws RangeError when f is negative or a df is not above zero
 * @example fUpper(4.9646, 1, 10).toFixed(4) // => "0.0500"
 */
export function fUpper(f: number, d1: number, d2: number): number {
  if (!(f >= 0)) throw new RangeError(`fUpper requires a statistic of at least zero, received ${f}`);
  if (!(d1 > 0 && d2 > 0)) throw new RangeError(`fUpper requires degrees of freedom above zero, received ${d1} and ${d2}`);
  const scaled = d1 * f;
  if (scaled === Infinity) return 0;
  return scaled < d2 ? betaUpperOf(scaled / (d2 + scaled), d1 / 2, d2 / 2) : betainc(d2 / (d2 + scaled), d2 / 2, d1 / 2);
}
