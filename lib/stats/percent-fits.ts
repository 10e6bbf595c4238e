import { requireCount } from "./require";

/**
 * Whether a printed percentage is its own counts', and which counts it would be: every numerator that prints so over the same denominator, and every
 * denominator that prints so under the same numerator. A half may have been rounded either way. Above 100 % for events counted over cases.
 * By arithmetic.
 * @param printed the percentage as printed; `digits` how many decimals it was printed with
 * @throws RangeError when x isn't a whole number of at least 0, n of at least 1, digits of 0 to 6, or printed is below 0
 * @example percentFits({ x: 98, n: 140, printed: 72, digits: 0 }).numerators // => [101]
 */
export function percentFits({ x, n, printed, digits }: { x: number; n: number; printed: number; digits: number }) {
  requireCount("percentFits", "x", x);
  requireCount("percentFits", "n", n, 1);
  requireCount("percentFits", "digits", digits);
  if (digits > 6) throw new RangeError(`percentFits requires digits of at most 6, received ${digits}`);
  if (!(printed >= 0 && Number.isFinite(printed)))
    throw new RangeError(`percentFits requires a printed percentage of at least 0, received ${printed}`);
  const half = 0.5 * 10 ** -digits + 1e-9;
  const [least, most] = [Math.max(0, printed - half), printed + half];
  const percent = (100 * x) / n;
  return {
    fits: percent >= least && percent <= most,
    percent,
    numerators: wholeFrom((least * n) / 100, (most * n) / 100),
    denominators: x === 0 || least === 0 ? [] : wholeFrom((100 * x) / most, (100 * x) / least),
    x,
    n,
    method: "rounding of a printed percentage",
    notes: [],
  } as const;
}

function wholeFrom(least: number, most: number): readonly number[] {
  const first = Math.ceil(least);
  return Array.from({ length: Math.max(0, Math.floor(most) - first + 1) }, (_, i) => first + i);
}
