import { digitAt } from "./weighted";

/** Luhn's modulus 10: every second digit from the right doubled, its own digits added (ISO/IEC 7812-1, annex B). */
export function hasLuhnCheck(digits: string): boolean {
  let sum = 0;
  for (let at = digits.length - 1, doubled = false; at >= 0; at--, doubled = !doubled) {
    const value = digitAt(digits, at) * (doubled ? 2 : 1);
    sum += value > 9 ? value - 9 : value;
  }
  return digits.length > 1 && sum % 10 === 0;
}

/** The modulus 10 of GS1: weights 3 and 1 from the right, check included (GS1 General Specifications §7.9). */
export function hasGs1Check(digits: string): boolean {
  let sum = 0;
  for (let at = digits.length - 1, weight = 1; at >= 0; at--, weight = 4 - weight) sum += digitAt(digits, at) * weight;
  return digits.length > 1 && sum % 10 === 0;
}
