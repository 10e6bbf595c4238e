/** `9.43477E+09`, as a spreadsheet writes a long number: whether digits are lost, and the digits where none is. */
export type Scientific = { readonly lost: boolean; readonly digits: string };

const form = /^[+-]?(\d)(?:[.,](\d{1,17}))?[eE]\+?(\d{1,2})$/;
// below this a number holds no more digits than a measurement
const leastExponent = 6;

/**
 * Reads a clean cell in scientific notation; `null` where it is none or is a small number.
 * @example scientificNumber("9.43477E+09") // => { lost: true, digits: "" }
 */
export function scientificNumber(text: string): Scientific | null {
  const [, first = "", decimals = "", exponent = ""] = form.exec(text) ?? [];
  if (first === "" || Number(exponent) < leastExponent) return null;
  const lost = decimals.length < Number(exponent);
  return { lost, digits: lost ? "" : (first + decimals).slice(0, Number(exponent) + 1) };
}
