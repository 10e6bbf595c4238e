/** A calendar day as whole days since 1 January 1970. */
export type Day = number;

const millisecondsPerDay = 86_400_000;

export function dayOf(year: number, month: number, day: number): Day {
  return Date.UTC(year, month - 1, day) / millisecondsPerDay;
}

export function partsOf(day: Day): { readonly year: number; readonly month: number; readonly day: number } {
  const date = new Date(day * millisecondsPerDay);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

const two = (value: number) => String(value).padStart(2, "0");

/** @example isoOf(19_782) // => "2024-02-29" */
export function isoOf(day: Day): string {
  const { year, month, day: ofMonth } = partsOf(day);
  return `${year}-${two(month)}-${two(ofMonth)}`;
}

/** Day, month and year in that order, as a unit's own sheet has them. */
export function dmyOf(day: Day, mark: "/" | "."): string {
  const { year, month, day: ofMonth } = partsOf(day);
  return [two(ofMonth), two(month), String(year)].join(mark);
}

/** Clinics and theatres run from Monday to Friday: a Saturday or Sunday becomes the Monday after. */
export function onWeekday(day: Day): Day {
  const weekday = new Date(day * millisecondsPerDay).getUTCDay();
  if (weekday === 6) return day + 2;
  return weekday === 0 ? day + 1 : day;
}

/** Completed years between two days. */
export function yearsBetween(from: Day, to: Day): number {
  return (to - from) / 365.25;
}

/** The day on which the sheet of the demo unit was closed: nothing later is recorded in any file. */
export const closingDay: Day = dayOf(2025, 3, 31);
