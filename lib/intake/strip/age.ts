import { type CalendarDate, dayNumberOf, isLeapYear } from "./calendar-day";

const adultYears = 18;
const oldestYears = 90;

/** The birthday in a year; someone born on 29 February has it on 1 March where the year has none. */
function birthdayIn(birth: CalendarDate, year: number): number {
  const leapless = birth.month === 2 && birth.day === 29 && !isLeapYear(year);
  return dayNumberOf(leapless ? { year, month: 3, day: 1 } : { ...birth, year });
}

/**
 * Exact age in years: completed years, and the days since the last birthday as a part of the days from that birthday to the next.
 * @throws RangeError when the second day lies before birth
 * @example ageAt({ year: 2010, month: 3, day: 1 }, { year: 2024, month: 8, day: 30 }).toFixed(2) // => "14.50"
 */
export function ageAt(birth: CalendarDate, at: CalendarDate): number {
  const day = dayNumberOf(at);
  if (day < dayNumberOf(birth)) throw new RangeError("ageAt requires a day not before birth, received an earlier one");
  const year = day < birthdayIn(birth, at.year) ? at.year - 1 : at.year;
  const last = birthdayIn(birth, year);
  return year - birth.year + (day - last) / (birthdayIn(birth, year + 1) - last);
}

/**
 * Age as it is kept: to the nearest tenth below 18 (never 18 before that birthday), completed years from 18, and 90 for 90 and over
 * (45 CFR 164.514(b)(2)(i)(C) allows one category for all ages above 89).
 * @throws RangeError for a negative age or no number
 * @example ageBanded(104) // => 90
 */
export function ageBanded(years: number): number {
  if (!(years >= 0) || years === Number.POSITIVE_INFINITY)
    throw new RangeError("ageBanded requires an age of 0 years or more, received none");
  if (years >= adultYears) return Math.min(oldestYears, Math.floor(years));
  return Math.min(adultYears - 0.1, Math.round(years * 10) / 10);
}
