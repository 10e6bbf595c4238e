import type { CalendarDate } from "./calendar-day";

/** Quarter of the calendar year, 1–4. @example quarterOf({ year: 2024, month: 5, day: 2 }) // => 2 */
export function quarterOf({ month }: CalendarDate): number {
  if (!isMonth(month)) throw new RangeError(`quarterOf requires a month from 1 to 12, received ${month}`);
  return Math.ceil(month / 3);
}

/**
 * The unit's audit year, named for the calendar year in which it begins: with a start in April, 31 March 2024 falls in 2023.
 * @throws RangeError when the start is no month
 * @example auditYearOf({ year: 2024, month: 3, day: 31 }, 4) // => 2023
 */
export function auditYearOf({ year, month }: CalendarDate, startsInMonth: number): number {
  if (!isMonth(startsInMonth)) throw new RangeError(`auditYearOf requires a start month from 1 to 12, received ${startsInMonth}`);
  return month >= startsInMonth ? year : year - 1;
}

function isMonth(month: number): boolean {
  return Number.isInteger(month) && month >= 1 && month <= 12;
}
