import { type CalendarDate, isCalendarDate } from "../strip";
import type { DateOrder } from "../types";
import { type DateParts, datePartsOf } from "./date-parts";
import { excelSerial } from "./excel-serial";

export type DateRead =
  | { readonly date: CalendarDate; readonly swapped: CalendarDate | null; readonly why: null }
  | { readonly date: null; readonly swapped: CalendarDate | null; readonly why: "not-a-date" | "date-impossible" };

const earliestYear = 1900;
// 18 May 1927: a smaller number in a column of dates is a year typed alone, or a time
const smallestSerial = 10_000;

/** How dates of a file are read: the order of day and month, and the year in which a two-digit year ends its century. */
export type DateRules = { readonly order: DateOrder | null; readonly thisYear: number };

/** A typed date, or the serial number that a spreadsheet left of it. `swapped`: the day with day and month exchanged, where that is one. */
export function readDate(cell: string, rules: DateRules): DateRead {
  const text = cell.trim();
  if (/^\d{1,5}(?:[.,]0+)?$/.test(text)) return fromSerial(Number(text.replace(",", ".")));
  const parts = datePartsOf(text);
  return parts ? fromParts(parts, rules) : { date: null, swapped: null, why: "not-a-date" };
}

function fromSerial(serial: number): DateRead {
  const date = serial < smallestSerial ? null : excelSerial(serial);
  return date ? { date, swapped: null, why: null } : { date: null, swapped: null, why: "not-a-date" };
}

function fromParts(parts: DateParts, { order, thisYear }: DateRules): DateRead {
  if (parts.kind === "ymd") return made(parts.year, parts.month, parts.day);
  const year = yearOf(parts.yearText, thisYear);
  if (parts.kind === "word") return made(year, parts.month, parts.day);
  if (order === "ymd")
    return parts.yearText.length === 2
      ? made(yearOf(String(parts.a).padStart(2, "0"), thisYear), parts.b, Number(parts.yearText))
      : made(year, parts.b, parts.a);
  return order === "mdy" ? made(year, parts.a, parts.b) : made(year, parts.b, parts.a);
}

function made(year: number, month: number, day: number): DateRead {
  const swapped = day <= 12 && day !== month ? dateOrNull(year, day, month) : null;
  const date = year >= earliestYear ? dateOrNull(year, month, day) : null;
  return date ? { date, swapped, why: null } : { date: null, swapped, why: "date-impossible" };
}

function dateOrNull(year: number, month: number, day: number): CalendarDate | null {
  return isCalendarDate(year, month, day) ? { year, month, day } : null;
}

/** A two-digit year is the latest one that is not in the future. @example yearOf("45", 2026) // => 1945 */
export function yearOf(text: string, thisYear: number): number {
  const year = Number(text);
  if (text.length > 2) return year;
  const century = thisYear - (thisYear % 100);
  return century + year <= thisYear ? century + year : century - 100 + year;
}
