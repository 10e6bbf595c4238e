import type { Field } from "@/lib/codebook";
import { perUnit } from "../cells/per-unit";
import type { HeaderUnit } from "../match/header-unit";
import { fieldOfTarget, targetId } from "../match/target";
import type { Sheet } from "../types";
import { markFrom, noMarkEvidence, weighMark } from "../values/decimal-mark";
import type { DecimalMark } from "../values/number";
import { samplesOf, tallyOf } from "./column-cells";
import type { MappedColumn } from "./mapped-column";
import { type Question, question } from "./question";

export type Marks = { readonly of: (column: MappedColumn) => DecimalMark; readonly questions: readonly Question[] };

/** The decimal mark of each column: what its own numbers prove, else what the person said, else what the file's other columns prove. */
export function planMarks(sheet: Sheet, columns: readonly MappedColumn[], said: DecimalMark | null): Marks {
  const numeric = columns.filter(({ target, unit }) => isNumeric(fieldOfTarget(target), unit));
  const own = new Map(numeric.map((column) => [column.index, markOfColumn(sheet, column)]));
  const proved = new Set([...own.values()].filter((mark) => mark === "," || mark === "."));
  const shared = said ?? (proved.size === 1 ? ([...proved][0] as DecimalMark) : null);
  const unknown = numeric.filter(({ index }) => own.get(index) === "unknown" && shared === null);
  const of = ({ index }: MappedColumn): DecimalMark => {
    const mark = own.get(index);
    return mark === "," || mark === "." ? mark : (shared ?? ".");
  };
  return { of, questions: unknown.map((column) => askMark(sheet, column)) };
}

function askMark(sheet: Sheet, { header, target, index }: MappedColumn): Question {
  const place = { file: sheet.file, column: header, field: targetId(target) };
  return question("decimal-mark-unknown", place, "numbers with one mark before three digits", {
    choices: [",", "."],
    settledBy: "decimal",
    samples: samplesOf(sheet, index),
  });
}

function markOfColumn(sheet: Sheet, { index, target, unit }: MappedColumn) {
  const field = fieldOfTarget(target);
  const factor = field ? (perUnit(field, unit) ?? 1) : 1;
  const hard = limitsOf(field);
  const possible = (value: number) => !hard || (value * factor >= hard[0] && value * factor <= hard[1]);
  const evidence = noMarkEvidence();
  for (const [cell, times] of tallyOf(sheet, index)) weighMark(cell, evidence, possible, times);
  return markFrom(evidence);
}

const longestDays = 11_000; // 30 years from surgery

function limitsOf(field: Field | null): readonly [number, number] | undefined {
  if (field?.kind === "day") return [-longestDays, longestDays];
  return field?.kind === "number" || field?.kind === "count" ? field.hard : undefined;
}

function isNumeric(field: Field | null, unit: HeaderUnit | null): boolean {
  return field !== null && (field.kind === "number" || field.kind === "count" || (field.kind === "day" && unit !== null));
}
