/** At most six digits, a sign and one decimal mark with at most six more: a measurement, no one's number. */
export function isShortNumber(text: string): boolean {
  return text.length <= 14 && /^[+-]?\d{0,6}(?:[.,]\d{0,6})?$/.test(text);
}
