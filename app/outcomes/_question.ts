import type { HealingQuestion, MeasureEntry } from "@/lib/answers";
import type { ClockUnit } from "@/lib/charts";
import type { Asked } from "../_page/asked";
import { type Refuse, readBatch, readBy, readWhere, type Trouble, textOf } from "./_address/pieces";

export type OutcomesQuestion = Required<Pick<HealingQuestion, "measure" | "by" | "rescue" | "where">> & {
  readonly asOf: number | null;
  readonly unit: ClockUnit;
};

const usual = { measure: "surgery-to-consolidation", rescue: "counted" } as const;
const known = ["measure", "by", "unit", "rescue", "where", "asOf"];

/** Reads the address. The address is the question: what is left out of it has its usual value. */
export function readQuestion(
  asked: Asked,
  newestBatch: number,
  clocks: readonly MeasureEntry[],
): { question: OutcomesQuestion } | { troubles: readonly Trouble[] } {
  const troubles: Trouble[] = [];
  const refuse = (parameter: string, expected: string) => void troubles.push({ parameter, expected });
  for (const name of Object.keys(asked)) if (!known.includes(name)) refuse("a piece with an unknown name", `one of ${known.join(", ")}`);
  const text = (name: string) => textOf(asked[name], () => refuse(name, "to be given once"));

  const measure = readMeasure(text("measure"), clocks, refuse);
  const by = readBy(text("by"), refuse);
  const rescue = readOneOf(text("rescue"), ["counted", "competing"] as const, () => refuse("rescue", "counted or competing"));
  const unit = readOneOf(text("unit"), ["days", "months"] as const, () => refuse("unit", "days or months"));
  const where = readWhere(text("where"), refuse);
  const asOf = readBatch(text("asOf"), newestBatch, refuse);
  if (troubles.length > 0) return { troubles };
  return { question: { measure: measure.id, by, rescue, where, asOf, unit: shownUnit(measure.unit, unit) } };
}

function readMeasure(text: string | null, list: readonly MeasureEntry[], refuse: Refuse): { readonly id: string; readonly unit: string } {
  const found = list.find(({ id }) => id === (text ?? usual.measure));
  if (!found) refuse("measure", `one of ${list.map(({ id }) => id).join(", ")}`);
  return found ?? { id: usual.measure, unit: "days/cm" };
}

function readOneOf<const T extends readonly [string, ...string[]]>(text: string | null, values: T, refuse: () => void): T[number] {
  const found = text === null ? values[0] : values.find((value) => value === text);
  if (found === undefined) refuse();
  return found ?? values[0];
}

/** Only an index can be read in months; clocks in days or mm a day have one unit. */
function shownUnit(own: string, chosen: "days" | "months"): ClockUnit {
  if (own === "days" || own === "mm/day") return own;
  return chosen === "months" ? "months/cm" : "days/cm";
}
