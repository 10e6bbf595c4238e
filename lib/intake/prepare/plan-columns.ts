import type { DayField } from "@/lib/codebook";
import type { SheetMatch } from "../match/column-match";
import { fieldOfTarget, targetId } from "../match/target";
import type { DateOrder, LengthUnit, Mapping, Sheet } from "../types";
import { datePartsOf } from "../values/date-parts";
import { type DecimalMark, readNumber } from "../values/number";
import { samplesOf, share } from "./column-cells";
import type { ColumnPlan, Reading } from "./column-plan";
import type { MappedColumn } from "./mapped-column";
import { planDates } from "./plan-dates";
import { planMarks } from "./plan-marks";
import { askUnit, lengthUnit, typicalOf } from "./plan-units";
import { type Question, question } from "./question";

export type Plan = { readonly columns: readonly ColumnPlan[]; readonly dates: DateOrder | null; readonly questions: readonly Question[] };
export type PlanOptions = Pick<Mapping, "dates" | "decimal"> & { readonly lengths: LengthUnit | null };
type Planned = { readonly plan: ColumnPlan; readonly questions: readonly Question[] };

/** How each mapped column is read, and what must be asked before it can be: date order, decimal mark, unit, which of two columns. */
export function planColumns(sheet: Sheet, match: SheetMatch, { dates, decimal, lengths }: PlanOptions): Plan {
  const mapped = match.columns.filter((column): column is MappedColumn => column.target !== null);
  const single = mapped.filter(({ sharedWith }) => sharedWith.length === 0);
  const marks = planMarks(sheet, single, decimal);
  const planned = single.map((column) => planColumn(sheet, column, marks.of(column), lengths));
  const columns = planned.map(({ plan }) => plan);
  const order = planDates(sheet, columns, dates);
  const questions = [...doubled(sheet, mapped), ...order.questions, ...marks.questions, ...planned.flatMap((each) => each.questions)];
  return { columns, dates: order.order, questions };
}

function doubled(sheet: Sheet, mapped: readonly MappedColumn[]): Question[] {
  const shared = mapped.filter(({ sharedWith }) => sharedWith.length > 0);
  return shared.map(({ header, target, sharedWith, index }) =>
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

function planColumn(sheet: Sheet, column: MappedColumn, mark: DecimalMark, lengths: LengthUnit | null): Planned {
  const { index, header, target } = column;
  const field = fieldOfTarget(target);
  const plan = (reading: Reading, questions: readonly Question[] = []): Planned => ({
    plan: { index, header, target, field, reading },
    questions,
  });
  if (target.field === "dateOfBirth") return plan({ as: "birth-date" });
  if (field === null) return plan({ as: "text" });
  if (field.kind === "day") return planDay(sheet, column, field, mark);
  if (field.kind !== "number" && field.kind !== "count") return plan({ as: "code" });
  const open = field.kind === "number" && field.unit === "mm" && column.unit === null;
  const unit = open ? lengthUnit(sheet, index, field, mark, lengths) : column.unit;
  if (open && unit === null) return plan({ as: "number", unit: "mm", mark, typical: null }, [askUnit(sheet, column, ["mm", "cm"])]);
  return plan({ as: "number", unit, mark, typical: typicalOf(sheet, column, field, unit, mark) });
}

/** A day's column holds dates, or times since surgery when its header says a unit; numbers too small for a date and without one are asked about. */
function planDay(sheet: Sheet, column: MappedColumn, field: DayField, mark: DecimalMark): Planned {
  const { index, header, target, unit } = column;
  const plan = (reading: Reading, questions: readonly Question[] = []): Planned => ({
    plan: { index, header, target, field, reading },
    questions,
  });
  if (unit !== null) {
    if (share(sheet, index, (cell) => datePartsOf(cell) !== null) > 0.5) return plan({ as: "date" });
    return plan({ as: "duration", unit, mark, typical: typicalOf(sheet, column, field, unit, mark) });
  }
  const isTimes = target.field !== "surgeryDay" && share(sheet, index, (cell) => isTime(cell, mark)) > 0.5;
  if (!isTimes) return plan({ as: "date" });
  return plan({ as: "duration", unit: "days", mark, typical: null }, [askUnit(sheet, column, ["days", "weeks", "months"])]);
}

const smallestSerial = 10_000; // 18 May 1927; no time since surgery is as long

function isTime(cell: string, mark: DecimalMark): boolean {
  const read = datePartsOf(cell) === null ? readNumber(cell, mark) : null;
  return read !== null && Math.abs(read.value) < smallestSerial;
}
