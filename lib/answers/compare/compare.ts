import type { Where } from "@/lib/cohorts";
import type { IndexDefinition } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { ask } from "../ask";
import { dataTo } from "../frames/data-to";
import { atLandmark, splitNotes } from "../healing/landmark";
import { seed } from "../healing/median-interval";
import { measureList } from "../measures";
import { readMeasure } from "../measures/catalogue";
import { clocksAsOf } from "../measures/clocks";
import { comparedId } from "../measures/scores";
import { answerCache } from "../question/cache";
import { keepQuestion } from "../question/keep";
import { splitsLookedAt } from "../question/splits";
import { type Question, stampOf } from "../question/stamp";
import { stateAsOf } from "../question/state";
import { version } from "../question/version";
import type { HealingGroup, MeasureGroup, Note } from "../types";
import { type Balance, balanceOf, caseMixFields } from "./balance";
import { differencesOf } from "./by-measure";
import { type Asked, type Difference, once } from "./differences";
import { type Between, cohortsOf, type Side, sidesOf } from "./sides";

export type CompareQuestion = {
  readonly measure: string;
  readonly between: Between;
  readonly adjust?: readonly string[];
  /** p values appear only when asked for. */
  readonly test?: boolean;
  readonly scheme?: string;
  /** Pin-site infections left out of every count: nails have none. */
  readonly withoutPinSites?: boolean;
  /** Day from surgery on which a clock of healing starts instead, so that what is known by then can split and adjust. */
  readonly landmark?: number;
  readonly asOf?: number;
};

export type CompareAnswer = {
  readonly measure: string;
  readonly unit: string;
  readonly definition: { readonly title: string; readonly sentence: string };
  readonly sides: readonly [SideAnswer, SideAnswer];
  readonly groups: readonly (HealingGroup | MeasureGroup)[];
  /** Case mix, always first. */
  readonly balance: readonly Balance[];
  readonly differences: readonly Difference[];
  /** How many splits of this cohort were asked for in this registry, this one among them. */
  readonly splitsLookedAt: number;
  readonly notes: readonly Note[];
  readonly batch: number;
  readonly state: State;
  readonly stamp: string;
  readonly dataTo: string | null;
};
/** One side: in words, and who is in it. */
export type SideAnswer = { readonly words: string; readonly where: Where; readonly segments: number; readonly patients: number };

/** How two groups differ, without what each is by itself. */
export type DifferenceAnswer = Pick<CompareAnswer, "differences" | "notes" | "stamp">;

type Work = DifferenceAnswer & { readonly sides: readonly [Side, Side] };
const cached = answerCache<Work>(({ sides: [a, b] }) => a.cases.length + b.cases.length);

/**
 * How two groups differ: what the situation gets. For whoever shows the groups already.
 * @throws RangeError when the measure isn't known, a covariate doesn't fit it, one score of several isn't named, or a segment stands in both groups
 */
export async function difference(registry: Registry, asked: CompareQuestion): Promise<DifferenceAnswer> {
  const { differences, notes, stamp } = (await compared(registry, asked)).work;
  return { differences, notes, stamp };
}

/**
 * Two groups side by side: case-mix balance first, then what the situation gets.
 * @throws RangeError as `difference`
 */
export async function compare(registry: Registry, question: CompareQuestion): Promise<CompareAnswer> {
  const { asked, kept, work } = await compared(registry, question);
  const { state } = kept;
  const { sides, ...differs } = work;
  const mix = await sidesOf(registry, state, asked.between, caseMixFields);
  const groups = await Promise.all(sides.map((side) => groupOf(registry, asked, side, state)));
  return {
    measure: asked.measure,
    ...described(asked.measure, await clocksAsOf(registry, state.batch)),
    sides: [sideAnswer(sides[0]), sideAnswer(sides[1])],
    groups: groups.map((group, i) => ({ ...group, label: sides[i]?.label ?? group.label })),
    balance: balanceOf(mix[0].cases, mix[1].cases),
    splitsLookedAt: await splitsLookedAt(registry, kept),
    batch: state.batch,
    state,
    dataTo: await dataTo(registry, state),
    ...differs,
  };
}

type Answered = { readonly asked: CompareQuestion; readonly kept: Question; readonly work: Work };

/** What was asked with the measure by its whole id, the question as it is kept once it was answered, and its answer. */
async function compared(registry: Registry, question: CompareQuestion): Promise<Answered> {
  const state = await stateAsOf(registry, question.asOf);
  const asked = { ...question, measure: await comparedId(registry, state, question.measure) };
  const how = { adjust: asked.adjust ?? [], test: asked.test ?? false, landmark: asked.landmark };
  const kept = questionOf(asked, state, how);
  const stamp = stampOf(kept);
  // a stamp knows cohorts without their names
  const id = `${registry.folder} ${stamp} ${JSON.stringify(asked.between)}`;
  const work = await cached(id, async () => {
    const sides = await sidesOf(registry, state, asked.between, how.adjust);
    const { differences, notes } = await differencesOf(registry, state, asked, sides, how);
    const clocks = await clocksAsOf(registry, state.batch);
    return { sides, differences, notes: once([...notes, ...splitCaution(asked, clocks)]), stamp };
  });
  await keepQuestion(registry, stamp, kept);
  return { asked, kept, work };
}

/** Of a clock, whether the groups came about only after its start. */
function splitCaution({ between, measure, landmark }: CompareQuestion, clocks: readonly IndexDefinition[]): readonly Note[] {
  const clock = clocks.find(({ id }) => id === measure);
  return "field" in between && clock ? splitNotes([between.field], atLandmark(clock, landmark)) : [];
}

/** A side as a record: its cases counted. */
export function sideAnswer({ words, where, cases }: Side): SideAnswer {
  return { words, where, segments: cases.length, patients: new Set(cases.map(({ segment }) => segment.person)).size };
}

/** What a measure is called, and in which unit it is read. */
export function described(id: string, clocks: readonly IndexDefinition[]): Pick<CompareAnswer, "unit" | "definition"> {
  const entry = measureList(clocks).find((one) => one.id === id);
  const read = readMeasure(id);
  const definition = { title: read?.title ?? entry?.title ?? id, sentence: read?.sentence ?? entry?.definition ?? "" };
  return { unit: read?.unit ?? entry?.unit ?? "", definition };
}

/** A side as the measure by itself answers it. */
export async function groupOf(
  registry: Registry,
  { measure, scheme, withoutPinSites, landmark }: Pick<CompareQuestion, "measure" | "scheme" | "withoutPinSites" | "landmark">,
  { where }: Side,
  { batch }: State,
): Promise<HealingGroup | MeasureGroup> {
  const { groups } = await ask(registry, { measure, where, asOf: batch, scheme, withoutPinSites, landmark });
  return first<HealingGroup | MeasureGroup>(groups);
}

function first<Group>(groups: readonly Group[]): Group {
  const [group] = groups;
  if (!group) throw new RangeError("compare requires a group, received none");
  return group;
}

function questionOf(
  { measure: id, between, scheme, withoutPinSites = false, landmark }: CompareQuestion,
  state: State,
  { adjust, test }: Asked,
): Question {
  const cohort = cohortsOf(between);
  const by = "cohorts" in between ? [] : [between.field];
  const values = "cohorts" in between ? null : between.values.join(",");
  return {
    cohort,
    measure: id,
    by,
    method: "compare",
    options: {
      values,
      adjust: adjust.join(","),
      test,
      scheme: scheme ?? null,
      withoutPinSites,
      ...(landmark === undefined ? {} : { landmark }),
    },
    seed,
    version,
    state,
  };
}
