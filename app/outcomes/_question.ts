import type { HealingQuestion } from "@/lib/answers";
import { clockList } from "@/lib/answers";
import type { ClockUnit } from "@/lib/charts";
import { CohortError, conditionField, parseWhere, type Where } from "@/lib/cohorts";
import type { Asked } from "../_page/asked";

export type OutcomesQuestion = Required<Pick<HealingQuestion, "measure" | "by" | "rescue" | "where">> & {
  readonly asOf: number | null;
  readonly unit: ClockUnit;
};
/** A piece of the address that can't be answered, and what it may be. The piece itself is not repeated: it may hold anything. */
export type Trouble = { readonly parameter: string; readonly expected: string };

const usual = { measure: "surgery-to-consolidation", rescue: "counted" } as const;
const known = ["measure", "by", "unit", "rescue", "where", "asOf"];
const mostSplits = 2;

/** Reads the address. The address is the question: what is left out of it has its usual value. */
export function readQuestion(asked: Asked, newestBatch: number): { question: OutcomesQuestion } | { troubles: readonly Trouble[] } {
  const troubles: Trouble[] = [];
  const refuse = (parameter: string, expected: string) => void troubles.push({ parameter, expected });
  for (const name of Object.keys(asked)) if (!known.includes(name)) refuse("a piece with an unknown name", `one of ${known.join(", ")}`);
  const text = (name: string) => oneText(asked[name], () => refuse(name, "to be given once"));

  const measure = readMeasure(text("measure"), refuse);
  const by = readBy(text("by"), refuse);
  const rescue = readOneOf(text("rescue"), ["counted", "competing"] as const, () => refuse("rescue", "counted or competing"));
  const unit = readOneOf(text("unit"), ["days", "months"] as const, () => refuse("unit", "days or months"));
  const where = readWhere(text("where"), refuse);
  const asOf = readBatch(text("asOf"), newestBatch, refuse);
  if (troubles.length > 0) return { troubles };
  return { question: { measure: measure.id, by, rescue, where, asOf, unit: shownUnit(measure.unit, unit) } };
}

type Refuse = (parameter: string, expected: string) => void;

function oneText(value: string | string[] | undefined, refuse: () => void): string | null {
  if (Array.isArray(value)) refuse();
  return typeof value === "string" && value !== "" ? value : null;
}

function readMeasure(text: string | null, refuse: Refuse): { readonly id: string; readonly unit: string } {
  const list = clockList();
  const found = list.find(({ id }) => id === (text ?? usual.measure));
  if (!found) refuse("measure", `one of ${list.map(({ id }) => id).join(", ")}`);
  return found ?? { id: usual.measure, unit: "days/cm" };
}

function readBy(text: string | null, refuse: Refuse): readonly string[] {
  const fields = text === null ? [] : text.split(",");
  if (fields.some((field) => conditionField(field) === undefined))
    refuse("by", "fields of a segment or its patient, such as bone or device");
  if (fields.length > mostSplits) refuse("by", `at most ${mostSplits} fields`);
  return fields;
}

function readOneOf<const T extends readonly [string, ...string[]]>(text: string | null, values: T, refuse: () => void): T[number] {
  const found = text === null ? values[0] : values.find((value) => value === text);
  if (found === undefined) refuse();
  return found ?? values[0];
}

function readWhere(text: string | null, refuse: Refuse): Where {
  try {
    return text === null ? {} : parseWhere(text);
  } catch (error) {
    if (!(error instanceof CohortError)) throw error;
    refuse("where", `a cohort: ${error.message}`);
    return {};
  }
}

function readBatch(text: string | null, newest: number, refuse: Refuse): number | null {
  if (text === null) return null;
  const batch = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (!(batch >= 1 && batch <= newest)) refuse("asOf", `a batch from 1 to ${newest}`);
  return batch;
}

/** Only an index can be read in months; clocks in days or mm a day have one unit. */
function shownUnit(own: string, chosen: "days" | "months"): ClockUnit {
  if (own === "days" || own === "mm/day") return own;
  return chosen === "months" ? "months/cm" : "days/cm";
}
