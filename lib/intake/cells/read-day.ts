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
    if (date === null) return noDate(cell, why, swapped !== null, rules);
    const on = dayNumberOf(date);
    if (on > todayNumber) return unread("date-in-future", "a date after today");
    return readAs({ on, swapped: swapped ? dayNumberOf(swapped) : null });
  };
}

function noDate(cell: string, why: "not-a-date" | "date-impossible", mendsBySwap: boolean, { order }: DateRules): CellRead {
  if (isLostNumber(cell)) return unread("number-lost-to-spreadsheet", "a number in powers of ten or a spreadsheet's error");
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
    if (!read)
      return isLostNumber(cell)
        ? unread("number-lost-to-spreadsheet", "a number in powers of ten")
        : unread("not-a-number", describe(cell), { unit });
    const from = read.unit ?? unit;
    const factor = perUnit(field, from);
    if (factor === null) return unread("not-a-number", `a number in ${from}`, { unit });
    const facts: Fact[] = from === "months" ? [{ code: "months-converted", found: `${read.value} months` }] : [];
    if (from === "days" && looksLikeMonths(read.value, typical)) facts.push({ code: "months-typed-as-days", found: `${read.value} days` });
    return readAs({ after: Math.round(read.value * factor) }, facts);
  };
}

const fewestTypicalDays = 60;

/** A few days in a column of many, which as months would be like the others. */
function looksLikeMonths(days: number, typical: number | null): boolean {
  if (typical === null || typical < fewestTypicalDays || days <= 0 || days * 5 > typical) return false;
  const asMonths = days * daysPerMonth;
  return asMonths >= typical / 3 && asMonths <= typical * 3;
}
