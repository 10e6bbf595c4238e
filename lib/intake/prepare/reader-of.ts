import type { CodeField } from "@/lib/codebook";
import { type ReadCell, readAs, unread } from "../cells/cell-read";
import type { Suspect } from "../cells/not-understood";
import { readBones, readSides } from "../cells/read-bone-side";
import { readCodes, type Spellings } from "../cells/read-code";
import { readDates, readDurations } from "../cells/read-day";
import { readFlags } from "../cells/read-flag";
import { readListed } from "../cells/read-listed";
import { readCounts, readNumbers } from "../cells/read-number";
import { readReleases } from "../cells/read-releases";
import type { ColumnSuspect } from "../detect";
import { normaliseLocalId } from "../key";
import type { DateOrder, Mapping } from "../types";
import { isLostNumber } from "../values/number";
import type { ColumnPlan } from "./column-plan";

export type Rules = {
  readonly dates: DateOrder | null;
  readonly thisYear: number;
  readonly todayNumber: number;
  readonly values: Mapping["values"];
  /** The unit's own lists, by field. */
  readonly listed: Readonly<Record<string, readonly string[]>>;
};

/** Compiles the reader of a column's cells that aren't blank: one function a column, so that a million cells ask no question twice. */
export function readerOf(
  { target, field, reading }: ColumnPlan,
  rules: Rules,
  { cell: suspect, announcesNumbers }: ColumnSuspect,
): ReadCell {
  const said = rules.values[target.field] ?? {};
  const dates = { order: rules.dates, thisYear: rules.thisYear, todayNumber: rules.todayNumber };
  if (target.table === "file" && field === null) return readFileOnly(target.field, dates, suspect);
  if (target.field === "bone") return readBones(said, suspect);
  if (target.field === "side") return readSides(said, suspect);
  if (!field) return (cell) => readAs(cell);
  switch (field.kind) {
    case "code":
      return target.field === "consequenceOf" && target.number !== null
        ? readCodeOrNumber(field, said, suspect)
        : readCodes(field, said, suspect);
    case "flag":
      return readFlags(suspect);
    case "listed":
      return readListed(rules.listed[target.field] ?? [], said, suspect);
    case "count":
      return readCounts(field, numberColumn(reading), { suspect, every: announcesNumbers });
    case "number":
      return readNumbers(field, numberColumn(reading), { suspect, every: announcesNumbers });
    case "day":
      return reading.as === "duration" ? readDurations(field, reading) : readDates(dates);
    case "keyed":
      throw new RangeError("readerOf requires a field that a file can hold, received a keyed one");
  }
}

/** A code, or the number of another event in the row. */
function readCodeOrNumber(field: CodeField, said: Spellings, suspect: Suspect): ReadCell {
  const codes = readCodes(field, said, suspect);
  return (cell) => (/^[1-9]\d?$/.test(cell) ? readAs(Number(cell)) : codes(cell));
}

function numberColumn(reading: ColumnPlan["reading"]) {
  return reading.as === "number" ? reading : ({ mark: ".", unit: null, typical: null } as const);
}

function readFileOnly(field: string, dates: Parameters<typeof readDates>[0], suspect: Suspect): ReadCell {
  if (field === "dateOfBirth") return readDates(dates);
  if (field === "releases") return readReleases(suspect);
  if (field === "surgeonName") return (cell) => readAs(cell);
  return (cell) => {
    if (isLostNumber(cell)) return unread("number-lost-to-spreadsheet", "a number in powers of ten");
    return readAs(normaliseLocalId(cell) === "" ? null : cell);
  };
}
