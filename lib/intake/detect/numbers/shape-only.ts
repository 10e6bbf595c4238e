const ascending = new Set(["123456789", "1234567890", "0123456789", "12345678", "1234567"]);

/** Digits that have the length of a number and can't be anyone's: all alike, counting up, or of the range that the NHS keeps for tests. */
export function isShapeOnly(digits: string): boolean {
  return /^(\d)\1*$/.test(digits) || ascending.has(digits) || (digits.length === 10 && digits.startsWith("999"));
}
