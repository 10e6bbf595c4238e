import { betaCdf } from "./beta";
import { logGamma } from "./log-gamma";
import { normalCdf } from "./normal";

/**
 * P(T > t) of the noncentral t for t > 0, by Lenth's series. Good to about 1e-12 while the noncentrality stays below 37.
 * Lenth RV. Appl Stat 1989;38:185-189 (AS 243).
 */
export function noncentralTUpper(t: number, df: number, noncentrality: number): number {
  if (!(t > 0)) throw new RangeError(`noncentralTUpper requires t above zero, received ${t}`);
  if (!(Math.abs(noncentrality) < 37))
    throw new RangeError(`noncentralTUpper requires a noncentrality below 37, received ${noncentrality}`);
  const x = (t * t) / (t * t + df);
  const half = (noncentrality * noncentrality) / 2;
  let even = Math.exp(-half);
  let odd = noncentrality * Math.exp(-half - logGamma(1.5)) * Math.SQRT1_2;
  let sum = 0;
  for (let j = 0; j < 2000; j++) {
    const term = even * betaCdf(x, j + 0.5, df / 2) + odd * betaCdf(x, j + 1, df / 2);
    sum += term;
    if (j > half && Math.abs(term) < 1e-17) break;
    even *= half / (j + 1);
    odd *= half / (j + 1.5);
  }
  return Math.max(0, Math.min(1, 1 - normalCdf(-noncentrality) - sum / 2));
}
