import type { MeasureEntry } from "@/lib/answers";
import { conditionField, type Where } from "@/lib/cohorts";
import type { Asked } from "../../_page/asked";
import { type Refuse, readBatch, readWhere, type Trouble, textOf } from "../_address/pieces";
import { isMeasure, mostOutcomes, usualOutcomes } from "./_offered";

export const betweens = ["field", "groups", "cohorts"] as const;
type Between = (typeof betweens)[number];

export type PairQuestion = {
  readonly where: Where;
  readonly asOf: number | null;
  /** Two groups of a field, all its groups, or two saved cohorts. */
  readonly between: Between;
  readonly field: string;
  /** Values as the address writes them; `null`: the two largest groups. */
  readonly a: string | null;
  readonly b: string | null;
  /** Names of saved cohorts. */
  readonly first: string | null;
  readonly second: string | null;
  readonly measures: readonly string[];
  readonly adjust: readonly string[];
  readonly test: boolean;
  readonly withoutPinSites: boolean;
};

const usualField = "device";
const known = ["between", "field", "a", "b", "first", "second", "measure", "adjust", "test", "pins", "by", "where", "asOf"];
const mostCovariates = 8;

/** Reads the address of a comparison. Outcomes and covariates may be given several times: each tick is one. */
export function readPair(
  asked: Asked,
  newestBatch: number,
  list: readonly MeasureEntry[],
): { readonly question: PairQuestion } | { readonly troubles: readonly Trouble[] } {
  const troubles: Trouble[] = [];
  const refuse: Refuse = (parameter, expected) => void troubles.push({ parameter, expected });
  for (const name of Object.keys(asked)) if (!known.includes(name)) refuse("a piece with an unknown name", `one of ${known.join(", ")}`);
  const text = (name: string) => textOf(asked[name], () => refuse(name, "to be given once"));
  const said = text("between") ?? "field";
  const between = betweens.find((one) => one === said) ?? "field";
  if (between !== said) refuse("between", "field, groups or cohorts");
  const test = text("test") ?? "no";
  if (test !== "no" && test !== "yes") refuse("test", "yes or no");
  const pins = text("pins") ?? "counted";
  if (pins !== "counted" && pins !== "left-out") refuse("pins", "counted or left-out");
  const question: PairQuestion = {
    where: readWhere(text("where"), refuse),
    asOf: readBatch(text("asOf"), newestBatch, refuse),
    between,
    field: readField(text("field") ?? splitBefore(asked.by), refuse),
    a: text("a"),
    b: text("b"),
    first: text("first"),
    second: text("second"),
    measures: readMeasures(ticked(asked.measure), list, refuse),
    adjust: readAdjust(ticked(asked.adjust), refuse),
    test: test === "yes",
    withoutPinSites: pins === "left-out",
  };
  return troubles.length > 0 ? { troubles } : { question };
}

/** The split of the place that one comes from, where it is one field without bins. */
function splitBefore(by: string | string[] | undefined): string | null {
  return typeof by === "string" && /^[\w-]+$/.test(by) ? by : null;
}

function readField(text: string | null, refuse: Refuse): string {
  const field = text ?? usualField;
  if (conditionField(field) === undefined) refuse("field", "a field of a segment or its patient, such as device");
  return field;
}

function ticked(value: string | string[] | undefined): readonly string[] {
  return [...new Set([value ?? []].flat().filter((one) => one !== ""))];
}

function readMeasures(ids: readonly string[], list: readonly MeasureEntry[], refuse: Refuse): readonly string[] {
  if (!ids.every((id) => isMeasure(id, list))) refuse("measure", "ids of the list of measures, such as surgery-to-consolidation");
  if (ids.length > mostOutcomes) refuse("measure", `at most ${mostOutcomes} outcomes`);
  return ids.length === 0 ? usualOutcomes : ids;
}

function readAdjust(fields: readonly string[], refuse: Refuse): readonly string[] {
  if (!fields.every((field) => conditionField(field) !== undefined))
    refuse("adjust", "fields of a segment or its patient, such as ageAtSurgeryYears");
  if (fields.length > mostCovariates) refuse("adjust", `at most ${mostCovariates} fields`);
  return fields;
}
