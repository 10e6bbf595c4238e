import { hasGs1Check, hasLuhnCheck } from "../check-digits/luhn";
import { hasLongMod11Check, hasMod11Check } from "../check-digits/mod11";
import { hasVerhoeffCheck } from "../check-digits/verhoeff";
import { digitAt, weightedSum } from "../check-digits/weighted";
import type { SuspicionKind } from "../suspicion";
import { hasChiCheck } from "./chi";

export type NationalNumber = {
  readonly kind: SuspicionKind;
  readonly lengths: readonly number[];
  /** Whether digits of one of these lengths satisfy the check digit and the rule of the first digits. */
  readonly holds: (digits: string) => boolean;
};

const between = (digits: string, low: string, high: string) => digits.slice(0, low.length) >= low && digits.slice(0, high.length) <= high;
const startsWithOneOf = (digits: string, firsts: string) => firsts.includes(digits.charAt(0));

// core number of the Irish identifier: 812 000 000 – 859 999 999 before its check digit
const isIrishCore = (digits: string) => between(digits, "812", "859");

function hasIrishIhiCheck(digits: string): boolean {
  const core = digits.slice(7, 17);
  return hasGs1Check(digits) && ((isIrishCore(core) && hasMod11Check(core)) || hasLongMod11Check(digits));
}

// weights 2, 4, 8, 5, 10, 9, 7, 3 on the digits after the 9, each product modulo 11, the sum taken from 11
function hasBcPhnCheck(digits: string): boolean {
  const sum = weightedSum(digits.slice(1, 9), [2, 4, 8, 5, 10, 9, 7, 3]);
  return digits.startsWith("9") && 11 - (sum % 11) === digitAt(digits, 9);
}

function hasMedicareCheck(digits: string): boolean {
  return startsWithOneOf(digits, "23456") && weightedSum(digits, [1, 3, 7, 9, 1, 3, 7, 9]) % 10 === digitAt(digits, 8);
}

const isPalindrome = (digits: string) => [...digits].reverse().join("") === digits;

/** Numbers of digits alone with a check digit. Rules: the publishers named in the tests beside each vector. */
export const nationalNumbers: readonly NationalNumber[] = [
  { kind: "nhs-number", lengths: [10], holds: (digits) => hasMod11Check(digits) && !isIrishCore(digits) },
  { kind: "irish-ihi", lengths: [10], holds: (digits) => hasMod11Check(digits) && isIrishCore(digits) },
  { kind: "irish-ihi", lengths: [18], holds: hasIrishIhiCheck },
  { kind: "chi-number", lengths: [10], holds: hasChiCheck },
  // a spreadsheet takes the zero of days 01 to 09 away
  { kind: "chi-number", lengths: [9], holds: (digits) => hasChiCheck(`0${digits}`) },
  { kind: "canadian-sin", lengths: [9], holds: (digits) => !startsWithOneOf(digits, "08") && hasLuhnCheck(digits) },
  { kind: "bc-phn", lengths: [10], holds: hasBcPhnCheck },
  { kind: "australian-medicare", lengths: [10, 11], holds: hasMedicareCheck },
  { kind: "australian-ihi", lengths: [16], holds: (digits) => digits.startsWith("800360") && hasLuhnCheck(digits) },
  {
    kind: "indian-aadhaar",
    lengths: [12],
    holds: (digits) => !startsWithOneOf(digits, "01") && !isPalindrome(digits) && hasVerhoeffCheck(digits),
  },
  // the eleven-test: weights 9 to 2, and −1 for the last
  { kind: "dutch-bsn", lengths: [9], holds: (digits) => weightedSum(digits, [9, 8, 7, 6, 5, 4, 3, 2, -1]) % 11 === 0 },
];
