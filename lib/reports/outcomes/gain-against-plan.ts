import { type AgainstPlanAnswer, type AgainstPlanGroup, ask, gainAgainstPlan, type MeasureAnswer, type MeasureGroup } from "@/lib/answers";
import {
  type AgreementRecord,
  agreementFigure,
  type Column,
  count,
  estimate,
  type GainPlanRecord,
  gainAgainstPlanFigure,
  grouped,
  listed,
  once,
  reasonWords,
  shareText,
  shownEstimate,
  shownUnit,
  tableFrom,
  words,
} from "@/lib/charts";
import { drawable } from "../told/drawable";
import { askedOf, type PlaceQuestion, type Registry } from "../told/question";
import type { Told, ToldTable } from "../told/told";
import { byGroup } from "../words/by-group";
import { commandWords } from "../words/command-words";
import { leftOutOf } from "../words/left-out";
import { nobodyIn } from "../words/nobody";
import { notesOf } from "../words/notes";

export type PlanQuestion = PlaceQuestion & {
  /** `null`: the unit's own. */
  readonly toleranceMm: number | null;
  readonly plan: "plannedGainMm" | "plannedGainFinalMm";
};

const shares = ["gain-within-5mm", "gain-within-10mm", "gain-within-10percent", "gain-goal-reached"] as const;

/** Gain against the plan: how far it missed, how often it came within the tolerance, who stopped early, and why. */
export async function tellGainAgainstPlan(registry: Registry, question: PlanQuestion): Promise<Told> {
  const { toleranceMm, plan } = question;
  const asked = askedOf(question);
  const answer = await gainAgainstPlan(registry, { ...asked, plan, ...(toleranceMm === null ? {} : { toleranceMm }) });
  const within = await Promise.all(shares.map((measure) => ask(registry, { ...asked, measure, per: plan }) as Promise<MeasureAnswer>));
  return {
    title: "Gain against plan",
    sentences: planSentences(answer),
    cautions:
      plan === "plannedGainFinalMm"
        ? ["The final plan absorbs what went wrong on the way; against the plan at start, early stops show."]
        : [],
    figures: [drawable(gainAgainstPlanFigure, planOnce(answer)), drawable(agreementFigure, agreementOnce(answer))],
    tables: [sharesTable(within)],
    definition: answer.definition.sentence,
    method: answer.method,
    leftOut: leftOutOf(answer.groups),
    notes: notesOf([], answer.groups),
    references: [
      { of: "gain against plan", stamp: answer.stamp },
      ...within.map(({ stamp, definition }) => ({ of: definition.title.toLowerCase(), stamp })),
    ],
    commands: [
      commandWords("outcome gain-against-plan", question, { plan, tolerance: toleranceMm === null ? null : String(toleranceMm) }),
      commandWords("measure gain-error", question, { per: plan }),
      ...shares.map((id) => commandWords(`measure ${id}`, question, { per: plan })),
    ],
    batch: answer.batch,
    dataTo: answer.dataTo,
  };
}

const planWords = { plannedGainMm: "planned at start", plannedGainFinalMm: "in the final plan" } as const;

function errorOf({ bias, n, points }: AgainstPlanGroup) {
  const patients = new Set(points.map(({ person }) => person)).size;
  return { estimate: bias?.estimate ?? null, lower: bias?.lower ?? null, upper: bias?.upper ?? null, n, patients };
}

function planRecord(answer: AgainstPlanAnswer): GainPlanRecord {
  const limit = answer.toleranceMm;
  const groups = answer.groups.map((group) => ({
    ...group,
    error: errorOf(group),
    within: group.within ?? { x: 0, n: 0, patients: 0, estimate: null, lower: null, upper: null },
    marks: group.points.map(({ segment, plannedMm, gainMm, stoppedFor }) => ({
      segment,
      plannedMm,
      gainMm,
      outcome: outcomeOf(gainMm - plannedMm, limit),
      reason: stoppedFor,
    })),
  }));
  return { ...answer, plan: planWords[answer.plan], tolerance: { within: "mm", limit }, groups };
}

function outcomeOf(errorMm: number, limit: number) {
  if (errorMm < -limit) return "stopped-early" as const;
  return errorMm > limit ? ("overshot" as const) : ("reached" as const);
}

function agreementRecord(answer: AgainstPlanAnswer): AgreementRecord {
  const groups = answer.groups.map((group) => ({
    ...group,
    bias: errorOf(group),
    marks: group.points.map(({ segment, gainMm, plannedMm }) => ({ segment, first: gainMm, second: plannedMm })),
  }));
  return { ...answer, between: ["gained", planWords[answer.plan]], groups };
}

const mm = shownUnit("mm");

export function planSentences(answer: AgainstPlanAnswer): readonly string[] {
  const measured = answer.groups.filter(({ n }) => n > 0);
  if (measured.length === 0)
    return [nobodyIn(answer.groups) ? "No segment in this cohort." : "No segment of this cohort has both a plan and a gain."];
  const share = byGroup(measured, {
    text: (group) => (group.within ? shareText(group.within) : "not known"),
    rank: ({ within }) => (within?.lower === null ? null : (within?.estimate ?? null)),
    lowest: "the lowest share",
    highest: "the highest",
  });
  const bias = byGroup(measured, {
    text: (group) => shownEstimate(errorOf(group), mm),
    rank: ({ bias: own }) => (own?.lower === null ? null : (own?.estimate ?? null)),
    lowest: "the lowest mean",
    highest: "the highest",
  });
  return [
    `Within ${answer.toleranceMm} mm of the length ${planWords[answer.plan]}: ${share}.`,
    `Gain less plan, on average: ${bias}.`,
    stopsText(measured),
  ];
}

/** Early stops are named with their reasons, never left out. */
function stopsText(groups: readonly AgainstPlanGroup[]): string {
  const sum = (pick: (group: AgainstPlanGroup) => number) => groups.reduce((total, group) => total + pick(group), 0);
  const [stopped, overshot] = [sum((group) => group.stoppedEarly), sum((group) => group.overshot)];
  const reasons = new Map<string, number>();
  for (const group of groups) for (const [code, n] of Object.entries(group.reasons)) reasons.set(code, (reasons.get(code) ?? 0) + n);
  const sorted = [...reasons]
    .sort(([, a], [, b]) => b - a)
    .map(([code, n]) => `${grouped(n)} ${code === "not-recorded" ? "reason not recorded" : reasonWords(code)}`);
  const why = stopped === 0 ? "" : ` (${listed(sorted)})`;
  return `${grouped(stopped)} ended short of the plan by more than the tolerance${why}; ${grouped(overshot)} went beyond it.`;
}

function sharesTable(answers: readonly MeasureAnswer[]): ToldTable {
  const [first] = answers;
  const percent = { name: "%", perRecord: 100, digits: 0, valueDigits: 0 };
  const groupAt = (answer: MeasureAnswer, label: string): MeasureGroup | undefined => answer.groups.find((group) => group.label === label);
  const columns = answers.flatMap((answer) => {
    const { id, title } = answer.definition;
    const [share, interval] = estimate<MeasureGroup>(
      id,
      title.replace(/^Gain w/, "W"),
      percent,
      ({ label }) => groupAt(answer, label)?.share ?? null,
    );
    return [
      count<MeasureGroup>(`${id}-x`, title.replace(/^Gain w/, "W"), ({ label }) => groupAt(answer, label)?.share?.x),
      { ...share, head: "Share" },
      interval,
    ];
  });
  const head: Column<MeasureGroup>[] = [words("group", "Group", ({ label }) => label), count("measured", "Measured", ({ n }) => n)];
  return { caption: "Within other tolerances", table: tableFrom([...head, ...columns], first?.groups ?? []) };
}

const planOnce = once(planRecord);
const agreementOnce = once(agreementRecord);
