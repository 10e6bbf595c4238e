/** A day of the Gregorian calendar as typed in a file: no hour, no zone. `month` 1–12, `day` 1–31. */
export type CalendarDate = { readonly year: number; readonly month: number; readonly day: number };

const daysPerEra = 146_097; // 400 years
const epochOffset = 719_468; // 1 March of year 0 to 1 January 1970
const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** @example isLeapYear(1900) // => false */
export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** Whether year (1–9999), month and day are a day that exists. @example isCalendarDate(2023, 2, 29) // => false */
export function isCalendarDate(year: number, month: number, day: number): boolean {
  if (![year, month, day].every(Number.isInteger) || year < 1 || year > 9999) return false;
  const length = monthLengths[month - 1];
  if (length === undefined || day < 1) return false;
  return day <= (month === 2 && isLeapYear(year) ? 29 : length);
}

/**
 * Days from 1 January 1970 to a calendar day; negative before it. Whole-number arithmetic on years that begin in March, so that no zone,
 * clock change or two-digit-year rule of `Date` can move a day.
 * @throws RangeError when there is no such day
 * @example dayNumber(2000, 1, 1) // => 10957
 */
export function dayNumber(year: number, month: number, day: number): number {
  // a date of birth may be what was received: it is not repeated
  if (!isCalendarDate(year, month, day)) throw new RangeError("dayNumber requires a day of the calendar, received one that does not exist");
  const marchYear = month > 2 ? year : year - 1;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * daysPerEra + dayOfEra - epochOffset;
}

/** The calendar day of a day number: the inverse of `dayNumber`. @example calendarDateOf(19782) // => { year: 2024, month: 2, day: 29 } */
export function calendarDateOf(dayNumber: number): CalendarDate {
  if (!Number.isInteger(dayNumber)) throw new RangeError(`calendarDateOf requires a whole number of days, received ${dayNumber}`);
  const shifted = dayNumber + epochOffset;
  const era = Math.floor(shifted / daysPerEra);
  const dayOfEra = shifted - era * daysPerEra;
  const leapDays = Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leapDays) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0),
    month,
    day: dayOfYear - Math.floor((153 * marchMonth + 2) / 5) + 1,
  };
}

/** Day number of a calendar date. @throws RangeError when there is no such day */
export function dayNumberOf({ year, month, day }: CalendarDate): number {
  return dayNumber(year, month, day);
}
