import { isCalendarDate } from "../../strip/calendar-day";
import { hasLuhnCheck } from "../check-digits/luhn";
import { hasMod11Check } from "../check-digits/mod11";

/**
 * Scottish CHI number: DDMMYY of birth, two digits, a sex digit and a check by modulus 11 or, for numbers given from 2025–26, modulus 10.
 * The century isn't written: a day is one when it exists in 19YY or 20YY.
 */
export function hasChiCheck(digits: string): boolean {
  if (digits.length !== 10) return false;
  const [day, month, year] = [0, 2, 4].map((at) => Number(digits.slice(at, at + 2))) as [number, number, number];
  const born = isCalendarDate(1900 + year, month, day) || isCalendarDate(2000 + year, month, day);
  return born && (hasMod11Check(digits) || hasLuhnCheck(digits));
}
