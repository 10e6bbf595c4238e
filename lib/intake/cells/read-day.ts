import type { DayField } from "@/lib/codebook";
import type { HeaderUnit } from "../match/header-unit";
import { dayNumberOf } from "../strip";
import { type DateRules, readDate } from "../values/date";
import { describe } from "../values/describe";
import { type DecimalMark, isLostNumber, readNumber } from "../values/number";
import { type CellRead, type Fact, type ReadCell, readAs, unread } from "./cell-read";
import { daysPerMonth, perUnit } from "./per-unit";

type DateColumn = DateRules & { readonly todayNumber: number };

/** Reads a column of dates. */
export function readDates({ todayNumber, ...rules }: DateColumn): ReadCell {
  return (cell) => {
    if (cell.trim() === "-") return readAs(null);
    const { date, swapped, why } = readDate(cell, rules);
    if (date === null) return noDay(cell, why, swapped !== null, rules);
    const on = dayNumberOf(date);
    if (on > todayNumber) return unread("date-in-future", "a date after today");
    return readAs({ on, swapped: swapped ? dayNumberOf(swapped) : null });
  };
}

function noDay(cell: string, why: "not-a-date" | "date-impossible", mendsBySwap: boolean, { order }: DateRules): CellRead {
  if (isLostNumber(cell)) return unread("number-lost-to-spreadsheet", "a number in powers of ten or a spreadsheet’s error");
  if (why === "date-impossible") {
    const hint = mendsBySwap ? "Day and month look exchanged here: this column has them the other way round. Type the day again." : "";
    return unread("date-impossible", "a date that no calendar has", { why: hint });
  }
  return unread("not-a-date", describe(cell), { order: order ?? "" });
}

type DurationColumn = { readonly unit: HeaderUnit; readonly mark: DecimalMark; readonly typical: number | null };

/** Reads a column of times since that row's surgery. `typical`: the column's median, against which months typed as days show. */
export function readDurations(field: DayField, { unit, mark, typical }: DurationColumn): ReadCell {
  return (cell) => {
    if (cell.trim() === "-") return readAs(null);
    const read = readNumber(cell, mark);
    if (!read) return noNumber(cell, unit);
    const from = read.unit ?? unit;
    const factor = perUnit(field, from);
    if (factor === null) return unread("not-a-number", `a number in ${from}`, { unit });
    const days = Math.round(read.value * factor);
    if (Math.abs(days) > longestDays) return tooLong(cell);
    return readAs({ after: days }, factsOf(read.value, from, typical));
  };
}

function noNumber(cell: string, unit: HeaderUnit): CellRead {
  if (isLostNumber(cell)) return unread("number-lost-to-spreadsheet", "a number in powers of ten");
  return unread("not-a-number", describe(cell), { unit });
}

function tooLong(cell: string): CellRead {
  return unread("out-of-hard-range", describe(cell), { low: -longestDays, high: longestDays, unit: "days" });
}

function factsOf(value: number, from: HeaderUnit, typical: number | null): Fact[] {
  if (from === "months") return [{ code: "months-converted", found: `${value} months` }];
  return from === "days" && looksLikeMonths(value, typical) ? [{ code: "months-typed-as-days", found: `${value} days` }] : [];
}

// 40 years, our choice: what lies beyond is someone's number, or a birth date as a spreadsheet counts days
const longestDays = 14_610;
const fewestTypicalDays = 60;

/** A few days in a column of many, which as months would be like the others. */
function looksLikeMonths(days: number, typical: number | null): boolean {
  if (typical === null || typical < fewestTypicalDays || days <= 0 || days * 5 > typical) return false;
  const asMonths = days * daysPerMonth;
  return asMonths >= typical / 3 && asMonths <= typical * 3;
}
