import { digitAt, falling, weightedSum } from "./weighted";

const tenToTwo = falling(10, 9);
const seventeenToTwo = falling(17, 16);

/**
 * Modulus 11 of a ten-digit health number: weights 10 to 2, check = 11 − (sum mod 11), 11 written as 0, 10 never issued.
 * NHS Data Dictionary, NHS number.
 */
export function hasMod11Check(digits: string): boolean {
  return digits.length === 10 && checkOf(weightedSum(digits, tenToTwo)) === digitAt(digits, 9);
}

/** The same over 16 digits with weights 17 to 2, as one of two published readings of the Irish identifier has it. */
export function hasLongMod11Check(digits: string): boolean {
  return digits.length >= 17 && checkOf(weightedSum(digits, seventeenToTwo)) === digitAt(digits, 16);
}

function checkOf(sum: number): number {
  const check = 11 - (sum % 11);
  return check === 11 ? 0 : check;
}
