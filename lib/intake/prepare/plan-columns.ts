import type { DayField, Field } from "@/lib/codebook";
import { perUnit } from "../cells/per-unit";
import type { ColumnMatch, SheetMatch } from "../match/column-match";
import type { HeaderUnit } from "../match/header-unit";
import { fieldOfTarget, targetId } from "../match/target";
import type { DateOrder, LengthUnit, Mapping, Sheet } from "../types";
import { noEvidence, orderOf, weigh } from "../values/date-order";
import { datePartsOf } from "../values/date-parts";
import { markFrom, noMarkEvidence, weighMark } from "../values/decimal-mark";
import { type DecimalMark, readNumber } from "../values/number";
import type { ColumnPlan, Reading } from "./column-plan";
import { type Question, question } from "./question";

export type Plan = { readonly columns: readonly ColumnPlan[]; readonly dates: DateOrder | null; readonly questions: readonly Question[] };
export type PlanOptions = Pick<Mapping, "dates" | "decimal"> & { readonly lengths: LengthUnit | null };
type Column = ColumnMatch & { readonly target: NonNullable<ColumnMatch["target"]> };

const sampleCount = 3;

/** How each mapped column is read, and what must be asked before it can be: date order, decimal mark, unit, which of two columns. */
export function planColumns(sheet: Sheet, match: SheetMatch, options: PlanOptions): Plan {
  const mapped = match.columns.filter((column): column is Column => column.target !== null);
  const single = mapped.filter(({ sharedWith }) => sharedWith.length === 0);
  const marks = marksOf(sheet, single, options.decimal);
  const planned = single.map((column) => planColumn(sheet, column, marks.of(column), options.lengths));
  const dates = settleDates(sheet, planned, options.dates);
  const questions = [...doubled(sheet, mapped), ...dates.questions, ...marks.questions, ...planned.flatMap(({ questions }) => questions)];
  return { columns: planned.map(({ plan }) => plan), dates: dates.order, questions };
}

function doubled(sheet: Sheet, mapped: readonly Column[]): Question[] {
  return mapped
    .filter(({ sharedWith }) => sharedWith.length > 0)
    .map(({ header, target, sharedWith, index }) =>
      question(
        "two-columns-one-field",
        { file: sheet.file, column: header, field: targetId(target) },
        `${sharedWith.length + 1} columns for one field`,
        {
          choices: [targetId(target), "null"],
          settledBy: "columns",
          about: { others: sharedWith.join(", ") },
          samples: samplesOf(sheet, index),
        },
      ),
    );
}

export function samplesOf(sheet: Sheet, index: number): Question["samples"] {
  const samples: { row: number; cell: string }[] = [];
  for (let i = 0; i < sheet.rows.length && samples.length < sampleCount; i++) {
    const cell = sheet.rows[i]?.[index] ?? "";
    if (cell !== "") samples.push({ row: sheet.rowNumbers[i] as number, cell });
  }
  return samples;
}

function* cellsOf(sheet: Sheet, index: number): Generator<string> {
  for (const row of sheet.rows) {
    const cell = row[index] as string;
    if (cell !== "") yield cell;
  }
}

/** The decimal mark a column: what its own numbers prove, else what the mapping says, else what the file's other columns prove. */
function marksOf(sheet: Sheet, columns: readonly Column[], said: DecimalMark | null) {
  const numeric = columns.filter(({ target, unit }) => isNumeric(fieldOfTarget(target), unit));
  const own = new Map(numeric.map((column) => [column.index, markOfColumn(sheet, column)]));
  const proved = new Set([...own.values()].filter((mark) => mark === "," || mark === "."));
  const shared = said ?? (proved.size === 1 ? ([...proved][0] as DecimalMark) : null);
  const of = ({ index }: Column): DecimalMark => {
    const mark = own.get(index);
    return mark === "," || mark === "." ? mark : (shared ?? ".");
  };
  const unknown = numeric.filter(({ index }) => own.get(index) === "unknown" && shared === null);
  const questions = unknown.map(({ header, target, index }) =>
    question(
      "decimal-mark-unknown",
      { file: sheet.file, column: header, field: targetId(target) },
      "numbers with one mark before three digits",
      {
        choices: [",", "."],
        settledBy: "decimal",
        samples: samplesOf(sheet, index),
      },
    ),
  );
  return { of, questions };
}

function markOfColumn(sheet: Sheet, { index, target, unit }: Column) {
  const field = fieldOfTarget(target);
  const factor = field ? (perUnit(field, unit) ?? 1) : 1;
  const hard = field && (field.kind === "number" || field.kind === "count") ? field.hard : undefined;
  const possible = (value: number) => !hard || (value * factor >= hard[0] && value * factor <= hard[1]);
  const evidence = noMarkEvidence();
  for (const cell of cellsOf(sheet, index)) weighMark(cell, evidence, possible);
  return markFrom(evidence);
}

function isNumeric(field: Field | null, unit: HeaderUnit | null): boolean {
  return field !== null && (field.kind === "number" || field.kind === "count" || (field.kind === "day" && unit !== null));
}

function planColumn(
  sheet: Sheet,
  column: Column,
  mark: DecimalMark,
  lengths: LengthUnit | null,
): { plan: ColumnPlan; questions: Question[] } {
  const { index, header, target, unit } = column;
  const field = fieldOfTarget(target);
  const plan = (reading: Reading) => ({ plan: { index, header, target, field, reading }, questions: [] as Question[] });
  if (target.field === "dateOfBirth") return plan({ as: "birth-date" });
  if (field === null) return plan({ as: "text" });
  if (field.kind === "day") return planDay(sheet, column, field, mark);
  if (field.kind === "number" && field.unit === "mm" && unit === null) {
    const known = lengthUnit(sheet, index, field, mark, lengths);
    if (known !== null) return plan({ as: "number", unit: known, mark });
    return { ...plan({ as: "number", unit: "mm", mark }), questions: [askUnit(sheet, column, ["mm", "cm"])] };
  }
  if (field.kind === "number" || field.kind === "count") return plan({ as: "number", unit, mark });
  return plan({ as: "code" });
}

/** A day's column holds dates, or times since surgery when its header says a unit; numbers too small for a date and without one are asked about. */
function planDay(sheet: Sheet, column: Column, field: DayField, mark: DecimalMark): { plan: ColumnPlan; questions: Question[] } {
  const { index, header, target, unit } = column;
  const plan = (reading: Reading) => ({ index, header, target, field, reading });
  const times = target.field === "surgeryDay" ? 0 : share(sheet, index, (cell) => isTime(cell, mark));
  if (unit !== null) {
    const dates = share(sheet, index, (cell) => datePartsOf(cell) !== null);
    return { plan: plan(dates > 0.5 ? { as: "date" } : { as: "duration", unit, mark }), questions: [] };
  }
  if (times <= 0.5) return { plan: plan({ as: "date" }), questions: [] };
  return { plan: plan({ as: "duration", unit: "days", mark }), questions: [askUnit(sheet, column, ["days", "weeks", "months"])] };
}

const smallestSerial = 10_000; // 18 May 1927; no time since surgery is as long

function isTime(cell: string, mark: DecimalMark): boolean {
  const read = datePartsOf(cell) === null ? readNumber(cell, mark) : null;
  return read !== null && Math.abs(read.value) < smallestSerial;
}

function share(sheet: Sheet, index: number, is: (cell: string) => boolean): number {
  let all = 0;
  let those = 0;
  for (const cell of cellsOf(sheet, index)) {
    all++;
    if (is(cell)) those++;
  }
  return all === 0 ? 0 : those / all;
}

/**
 * The unit of lengths without one in the header: millimetres where the values can be nothing else (most would be impossible as centimetres),
 * else what the person said for the file; `null` where it must be asked.
 */
function lengthUnit(sheet: Sheet, index: number, field: Field, mark: DecimalMark, said: LengthUnit | null): LengthUnit | null {
  if (field.kind !== "number" || !field.hard) return said ?? "mm";
  const [low, high] = field.hard;
  const isOutside = (mm: number) => mm < low || mm > high;
  const values = [...cellsOf(sheet, index)].flatMap((cell) => lengthOf(cell, mark));
  if (values.length === 0) return "mm";
  const notMm = values.filter((value) => isOutside(value)).length;
  const notCm = values.filter((value) => isOutside(value * 10)).length;
  return notCm * 2 > values.length && notMm * 2 < values.length ? "mm" : said;
}

function lengthOf(cell: string, mark: DecimalMark): number[] {
  const read = readNumber(cell, mark);
  return read === null || read.unit !== null || read.value === 0 ? [] : [read.value];
}

function askUnit(sheet: Sheet, { header, target, index }: Column, choices: readonly string[]): Question {
  return question("unit-unknown", { file: sheet.file, column: header, field: targetId(target) }, "numbers without a unit", {
    choices,
    settledBy: "units",
    about: { units: choices.join(", ") },
    samples: samplesOf(sheet, index),
  });
}

function settleDates(sheet: Sheet, planned: readonly { plan: ColumnPlan }[], said: DateOrder | null) {
  const dated = planned.map(({ plan }) => plan).filter(({ reading }) => reading.as === "date" || reading.as === "birth-date");
  if (said !== null) return { order: said, questions: [] };
  const evidence = noEvidence();
  for (const { index } of dated) for (const cell of cellsOf(sheet, index)) weigh(cell, evidence);
  const order = orderOf(evidence);
  if (order === "none-needed") return { order: null, questions: [] };
  if (order !== "unknown") return { order, questions: [] };
  const asked = dated.find(({ index }) => [...cellsOf(sheet, index)].some((cell) => datePartsOf(cell)?.kind === "open"));
  const both = evidence.dayFirst > 0;
  const found = both ? "dates of both orders" : "dates that could be either";
  const questions = [
    question(
      "date-order-unknown",
      { file: sheet.file, column: asked?.header ?? null, field: asked ? targetId(asked.target) : null },
      found,
      {
        choices: ["dmy", "mdy", "ymd"],
        settledBy: "dates",
        samples: asked ? samplesOf(sheet, asked.index) : [],
      },
    ),
  ];
  return { order: null, questions };
}
