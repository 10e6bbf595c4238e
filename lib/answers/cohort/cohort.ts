import { canonicalWhere, describeWhere, type Where } from "@/lib/cohorts";
import type { Registry } from "@/lib/registry";
import { type Case, casesOf } from "../frames/cases";
import { stateAsOf } from "../question/state";

export type CohortAnswer = {
  readonly where: unknown;
  readonly words: string;
  readonly patients: number;
  readonly segments: number;
  /** From the registry to the cohort: what each condition leaves out, in order; the last line is what stays. */
  readonly flow: readonly FlowStep[];
};
export type FlowStep = { readonly reason: string; readonly words: string; readonly segments: number; readonly patients: number };

/**
 * Who is in a cohort, and what each of its conditions leaves out. Conditions are taken in the order of the canonical form, each on what the
 * ones before it left, so that the steps add up to the registry.
 */
export async function cohort(
  registry: Registry,
  { where, asOf }: { readonly where: Where; readonly asOf?: number },
): Promise<CohortAnswer> {
  const state = await stateAsOf(registry, asOf);
  const canonical = JSON.parse(canonicalWhere(where)) as Where;
  const conditions = Object.entries(canonical).map(([field, part]) => ({ [field]: part }) as Where);
  const flow: FlowStep[] = [];
  let held: readonly Case[] = await casesOf(registry, state, {}, []);
  flow.push(step("registry", "in the registry", held));
  for (const [i, condition] of conditions.entries()) {
    const kept = await casesOf(registry, state, { all: conditions.slice(0, i + 1) }, []);
    flow.push({
      ...step(Object.keys(condition)[0] ?? "", `not ${describeWhere(condition)}`, held),
      segments: held.length - kept.length,
      patients: patientsOf(held) - patientsOf(kept),
    });
    held = kept;
  }
  flow.push(step("cohort", "in the cohort", held));
  return { where: canonical, words: describeWhere(canonical), patients: patientsOf(held), segments: held.length, flow };
}

function step(reason: string, words: string, cases: readonly Case[]): FlowStep {
  return { reason, words, segments: cases.length, patients: patientsOf(cases) };
}

function patientsOf(cases: readonly Case[]): number {
  return new Set(cases.map(({ segment }) => segment.person)).size;
}
