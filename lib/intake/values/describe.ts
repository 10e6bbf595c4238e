const datePattern = /^\d{1,4}[./-]\d{1,2}[./-]\d{1,4}([ T]\d{1,2}:\d{2}.*)?$/;
const numberPattern = /^[-+]?[\d.,'\s]+(e[-+]?\d+)?\s*%?$/i;

/**
 * What a cell holds, never what it says: a kind and a length.
 * @example describe("Banana pie") // => "text, 2 words, 10 characters"
 * @example describe("R") // => "text, 1 letter"
 */
export function describe(cell: string): string {
  const text = cell.trim();
  if (text === "") return "a blank cell";
  if (datePattern.test(text)) return "a date";
  if (numberPattern.test(text)) return "a number";
  const words = text.split(/\s+/).length;
  if (words > 1) return `text, ${words} words, ${text.length} characters`;
  const one = /^\p{L}+$/u.test(text) ? "letter" : "character";
  return `text, ${text.length} ${one}${text.length === 1 ? "" : "s"}`;
}

/** Whether a cell holds a number or date, as data do and headers don't. */
export function looksLikeValue(cell: string): boolean {
  const text = cell.trim();
  return /\d/.test(text) && (datePattern.test(text) || numberPattern.test(text));
}
