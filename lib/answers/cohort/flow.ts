import { canonicalWhere, describeOutside, describeWhere, fieldsNamed, type Where } from "@/lib/cohorts";
import type { Registry } from "@/lib/registry";
import { type Case, casesOf } from "../frames/cases";
import { measureList } from "../measures";
import { readMeasure } from "../measures/catalogue";
import { clocksAsOf } from "../measures/clocks";
import { type Head, openQuestion } from "../question/open";
import { reasonsAgainst } from "./reasons-against";

export type FlowLine = {
  /** `stays`: how many are left here; `leaves`: how many go, and why. */
  readonly kind: "stays" | "leaves";
  /** `registry`, `cohort`, `analysed`; of those that leave the field of the condition, or the reason of the measure. */
  readonly reason: string;
  readonly words: string;
  readonly segments: number;
  /** Of those that leave: patients none of whose segments stay. */
  readonly patients: number;
};
export type CohortFlowAnswer = Head & {
  readonly measure: string;
  readonly definition: { readonly title: string; readonly sentence: string };
  readonly words: string;
  readonly patients: number;
  readonly segments: number;
  readonly lines: readonly FlowLine[];
};

/**
 * From the registry to the cohort, condition by condition, and on to what a measure analyses, reason by reason. Conditions stand in the
 * order of the canonical form, each on what the ones before it left, so that the lines add up.
 * @throws RangeError when the measure or the batch isn't known
 */
export async function cohortFlow(
  registry: Registry,
  { where, measure, asOf }: { readonly where: Where; readonly measure: string; readonly asOf?: number },
): Promise<CohortFlowAnswer> {
  const entry = measureList(await clocksAsOf(registry, asOf)).find(({ id }) => id === measure || measure.startsWith(`${id}.`));
  if (!entry) throw new RangeError(`cohortFlow requires an id of the list of measures, received ${measure}`);
  const head = await openQuestion(registry, {
    where,
    ...(asOf === undefined ? {} : { asOf }),
    measure: `cohort-flow.${measure}`,
    method: "each condition, then each reason of the measure, on what the ones before left",
  });
  const canonical = JSON.parse(canonicalWhere(where)) as Where;
  const all = await casesOf(registry, head.state, {}, []);
  const lines: FlowLine[] = [stays("registry", "in the registry", all)];
  let held: readonly Case[] = all;
  for (const [field, part] of Object.entries(canonical)) {
    const condition = { [field]: part } as Where;
    const kept = await meeting(registry, head, condition, held);
    lines.push(leaves(field, describeOutside(condition), held, kept));
    held = kept;
  }
  lines.push(stays("cohort", "in the cohort", held));
  const cohort = held;
  for (const [reason, out] of await reasonsAgainst(registry, head.state, measure, held, fieldsNamed(where).has("bone"))) {
    const kept = held.filter((one) => !out.has(one));
    lines.push(leaves(reason, reason, held, kept));
    held = kept;
  }
  lines.push(stays("analysed", "analysed", held));
  const read = readMeasure(measure);
  const definition = { title: read?.title ?? entry.title, sentence: read?.sentence ?? entry.definition };
  return { ...head, measure, definition, words: describeWhere(canonical), patients: patientsOf(cohort), segments: cohort.length, lines };
}

async function meeting(registry: Registry, { state }: Head, condition: Where, held: readonly Case[]): Promise<readonly Case[]> {
  const inside = new Set((await casesOf(registry, state, condition, [])).map(({ segment }) => segment.segment));
  return held.filter(({ segment }) => inside.has(segment.segment));
}

function stays(reason: string, words: string, cases: readonly Case[]): FlowLine {
  return { kind: "stays", reason, words, segments: cases.length, patients: patientsOf(cases) };
}

function leaves(reason: string, words: string, held: readonly Case[], kept: readonly Case[]): FlowLine {
  return { kind: "leaves", reason, words, segments: held.length - kept.length, patients: patientsOf(held) - patientsOf(kept) };
}

function patientsOf(cases: readonly Case[]): number {
  return new Set(cases.map(({ segment }) => segment.person)).size;
}
