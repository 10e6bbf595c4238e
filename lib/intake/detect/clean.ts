/** Cells longer than this are refused when a file is read; what lies beyond is not looked at. */
export const longestCell = 10_000;

// zero of each run of decimal digits that NFKC leaves as it is and that keyboards in use write
const zeros = [0x0660, 0x06f0, 0x0966, 0x09e6] as const;

/**
 * A text as detectors read it: NFKC (full-width digits become plain, a no-break space a space), invisible characters gone, every dash a
 * hyphen, every blank a single space.
 * @example cleanText("９４３\u2011476\u00a0 5870") // => "943-476 5870"
 */
export function cleanText(text: string): string {
  const held = text.length > longestCell ? text.slice(0, longestCell) : text;
  if (isPlainAscii(held)) return held.replace(/\s+/g, " ").trim();
  // one sign may become eighteen: what is longer than a cell may be is cut again, or a hostile text would cost eighteen times as much
  const folded = held.normalize("NFKC").slice(0, longestCell);
  return folded
    .replace(/\p{Cf}/gu, "")
    .replace(/\p{Dash}/gu, "-")
    .replace(/\p{Nd}/gu, plainDigit)
    .replace(/\s+/g, " ")
    .trim();
}

function isPlainAscii(text: string): boolean {
  for (let at = 0; at < text.length; at++) if (text.charCodeAt(at) > 126) return false;
  return true;
}

function plainDigit(digit: string): string {
  const code = digit.codePointAt(0) ?? 0;
  const zero = zeros.find((start) => code >= start && code < start + 10);
  return zero === undefined ? digit : String(code - zero);
}
