import { fieldsNamed, type Where } from "@/lib/cohorts";
import { gainErrorMm, healingStatus, isLeg, type Plan } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { type BlandAltman, estimate } from "@/lib/stats";
import { type Case, casesOf } from "../frames/cases";
import { fieldsOfSplit, type Group, type GroupKey, splitBy } from "../healing/groups";
import { said } from "../healing/said";
import { answerCache } from "../question/cache";
import { type Head, openQuestion } from "../question/open";
import { stateAsOf } from "../question/state";
import type { Interval, Note, Share } from "../types";

export type PlanPoint = {
  readonly segment: number;
  readonly person: number;
  readonly plannedMm: number;
  readonly gainMm: number;
  /** Why lengthening was stopped before the plan, where it was and that is recorded. */
  readonly stoppedFor: string | null;
};
export type AgainstPlanGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  readonly n: number;
  readonly excluded: Readonly<Record<string, number>>;
  readonly points: readonly PlanPoint[];
  readonly bias: Interval | null;
  readonly within: Share | null;
  readonly spread: { readonly p5: number; readonly median: number; readonly p95: number } | null;
  /** Limits of agreement, each with its own interval, from twenty patients on. */
  readonly limits: { readonly lower: Interval; readonly upper: Interval } | null;
  readonly reached: number;
  readonly stoppedEarly: number;
  readonly overshot: number;
  readonly reasons: Readonly<Record<string, number>>;
  readonly notes: readonly Note[];
};
export type AgainstPlanAnswer = Head & {
  readonly measure: "gain-error";
  readonly unit: "mm";
  readonly definition: { readonly title: string; readonly sentence: string };
  readonly toleranceMm: number;
  readonly plan: Plan;
  readonly groups: readonly AgainstPlanGroup[];
};

export type AgainstPlanQuestion = {
  readonly by?: readonly string[];
  readonly where?: Where;
  readonly asOf?: number;
  /** The unit's own unless said. */
  readonly toleranceMm?: number;
  /** The plan at start unless said: the final plan absorbs what went wrong on the way. */
  readonly plan?: Plan;
};

const planWords: Readonly<Record<Plan, string>> = { plannedGainMm: "the plan at start", plannedGainFinalMm: "the final plan" };

const cached = answerCache<AgainstPlanAnswer>(({ groups }) => groups.reduce((sum, { points }) => sum + points.length, 0));

/** Gain against the plan: bias, share within the tolerance, limits of agreement, and why some stopped early. */
export async function gainAgainstPlan(registry: Registry, asked: AgainstPlanQuestion): Promise<AgainstPlanAnswer> {
  const { plan = "plannedGainMm" } = asked;
  const state = await stateAsOf(registry, asked.asOf);
  const toleranceMm = asked.toleranceMm ?? (await registry.settings(state.batch)).toleranceMm;
  const head = await openQuestion(registry, {
    ...asked,
    measure: "gain-error.against-plan",
    method: "bias (CR2 by patient), Wilson’s interval on the effective number, limits of agreement from variance parts",
    options: { toleranceMm, plan },
  });
  return cached(`${registry.folder} ${head.stamp}`, async () => {
    const cases = await casesOf(registry, head.state, asked.where ?? {}, fieldsOfSplit(head.by));
    const boneNamed = fieldsOfSplit(head.by).includes("bone") || fieldsNamed(asked.where ?? {}).has("bone");
    const groups = splitBy(cases, head.by).map((group) => answerGroup(group, { toleranceMm, plan, boneNamed }));
    const sentence = `length gained less ${planWords[plan]}; early stops are never left out`;
    return { ...head, measure: "gain-error", unit: "mm", definition: { title: "Gain less plan", sentence }, toleranceMm, plan, groups };
  });
}

function pointOf({ segment }: Case, plan: Plan, boneNamed: boolean): PlanPoint | string {
  if (segment.procedure !== "transport" && !boneNamed && !isLeg(segment.bone)) return "bone-apart";
  if (segment.procedure !== "transport" && healingStatus(segment) === "still-distracting") return "still-distracting";
  const error = gainErrorMm(segment, plan);
  if (!error.measured) return error.because;
  const plannedMm = segment[plan] as number;
  const stoppedFor = error.value < 0 ? segment.planChangeReason : null;
  return { segment: segment.segment, person: segment.person, plannedMm, gainMm: segment.gainMm as number, stoppedFor };
}

type How = { readonly toleranceMm: number; readonly plan: Plan; readonly boneNamed: boolean };

function answerGroup(group: Group, { toleranceMm, plan, boneNamed }: How): AgainstPlanGroup {
  const read = group.cases.map((one) => pointOf(one, plan, boneNamed));
  const points = read.filter((point) => typeof point !== "string");
  const errors = points.map(({ gainMm, plannedMm }) => gainMm - plannedMm);
  const head = {
    key: group.key,
    label: group.label,
    patients: new Set(group.cases.map(({ segment }) => segment.person)).size,
    segments: group.cases.length,
    n: points.length,
    excluded: countOf(read.filter((point) => typeof point === "string")),
    points,
    reached: errors.filter((error) => Math.abs(error) <= toleranceMm).length,
    stoppedEarly: errors.filter((error) => error < -toleranceMm).length,
    overshot: errors.filter((error) => error > toleranceMm).length,
    reasons: countOf(points.filter((_, i) => (errors[i] as number) < -toleranceMm).map(({ stoppedFor }) => stoppedFor ?? "not-recorded")),
  };
  if (points.length === 0) return { ...head, bias: null, within: null, spread: null, limits: null, notes: [] };
  const { records, notes } = estimate({
    situation: "gain-error",
    errorMm: errors,
    patient: points.map(({ person }) => person),
    toleranceMm,
    stoppedEarly: errors.map((error) => Number(error < -toleranceMm)),
  });
  const { estimate: bias, se, df, lower, upper } = records.bias;
  const { x, n, patients, deff, plain, ...share } = records.withinTolerance;
  return {
    ...head,
    bias: { estimate: bias, se, df, lower, upper },
    within: { x, n, patients, estimate: share.estimate, lower: share.lower, upper: share.upper, deff, plain },
    spread: records.spread,
    limits: records.limits && limitsOf(records.limits),
    notes: notes.map(said),
  };
}

function limitsOf({ df, limitSe: se, ...found }: BlandAltman) {
  const limit = (estimate: number, interval: BlandAltman["limitLowerInterval"]): Interval => ({
    estimate,
    se,
    df,
    lower: interval?.lower ?? null,
    upper: interval?.upper ?? null,
  });
  return { lower: limit(found.limitLower, found.limitLowerInterval), upper: limit(found.limitUpper, found.limitUpperInterval) };
}

function countOf(words: readonly string[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const word of words) counts[word] = (counts[word] ?? 0) + 1;
  return counts;
}
