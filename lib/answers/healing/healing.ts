import { canonicalWhere, type Where } from "@/lib/cohorts";
import { type Denominator, definitionSentence, endsAtConsolidation, type IndexDefinition, type Rescue } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { standardisedDifference } from "../balance/gains";
import { dataTo } from "../frames/data-to";
import { clockOf } from "../measures/clocks";
import { answerCache } from "../question/cache";
import { keepQuestion } from "../question/keep";
import { type Question, stampOf } from "../question/stamp";
import { stateAsOf } from "../question/state";
import { version } from "../question/version";
import type { HealingAnswer, Note } from "../types";
import { knownGains } from "./columns";
import { type ReadGroup, summariseGroup } from "./group";
import { atLandmark, landmarkOption } from "./landmark";
import { seed } from "./median-interval";
import { readingsOf } from "./readings";
import { said } from "./said";

export type HealingQuestion = {
  readonly measure: string;
  readonly by?: readonly string[];
  readonly rescue?: Rescue;
  readonly per?: Denominator;
  /** Day from surgery on which the clock starts instead; only of clocks that end at consolidation. */
  readonly landmark?: number;
  readonly where?: Where;
  /** Batch as of which to answer; the newest unless said. */
  readonly asOf?: number;
};

const methods = {
  healing:
    "mean over healed segments (CR2 by patient, Satterthwaite df); mean of patient means (t); ratio of sums (linearised); median by Kaplan–Meier with bounds; log-normal time model at the median gain",
  measured: "mean (CR2 by patient, Satterthwaite df); mean of patient means (t); ratio of sums (linearised); median and quartiles, type 7",
} as const;
const gainsUnlike = 0.2;
const cached = answerCache<HealingAnswer>(({ groups }) => groups.reduce((sum, { marks }) => sum + marks.length, 0));

/**
 * Healing by group under a stated clock: the record that page, command line and figure show.
 * @throws RangeError when the clock or the batch isn't known; TypeError never
 */
export async function healing(registry: Registry, asked: HealingQuestion): Promise<HealingAnswer> {
  const where = asked.where ?? {};
  const by = asked.by ?? [];
  const state = await stateAsOf(registry, asked.asOf);
  const definition = definitionAsked(await clockOf(registry, state.batch, asked.measure), asked);
  const question: Question = {
    cohort: JSON.parse(canonicalWhere(where)),
    measure: definition.id,
    by,
    method: methods[endsAtConsolidation(definition) ? "healing" : "measured"],
    options: { rescue: definition.rescue, per: definition.per, ...landmarkOption(definition) },
    seed,
    version,
    state,
  };
  const stamp = stampOf(question);
  await keepQuestion(registry, stamp, question);
  return cached(`${registry.folder} ${stamp}`, () => work(registry, state, definition, where, by, stamp, question));
}

function definitionAsked(definition: IndexDefinition, { measure, rescue, per, landmark }: HealingQuestion): IndexDefinition {
  if (per && definition.per === null) throw new RangeError(`healing requires no denominator for ${measure}, received ${per}`);
  return atLandmark({ ...definition, rescue: rescue ?? definition.rescue, per: per ?? definition.per }, landmark);
}

async function work(
  registry: Registry,
  state: State,
  definition: IndexDefinition,
  where: Where,
  by: readonly string[],
  stamp: string,
  question: Question,
): Promise<HealingAnswer> {
  const { groups, medianGainMm } = await readingsOf(registry, state, definition, { where, by });
  const gains = groups.map(({ columns }) => knownGains(columns));
  return {
    measure: definition.id,
    definition: { ...definition, sentence: definitionSentence(definition), per: definition.per ?? "none" },
    unit: definition.unit,
    batch: state.batch,
    stamp,
    state,
    cohort: question.cohort,
    method: question.method,
    dataTo: await dataTo(registry, state),
    by,
    groups: groups.map((group) => summariseGroup(group, definition, medianGainMm)),
    notes: answerNotes(groups, gains, definition, by),
  };
}

/** An index whose groups differ in gain, or that is split by gain, says so wherever it is shown. */
function answerNotes(
  groups: readonly ReadGroup[],
  gains: readonly (readonly number[])[],
  definition: IndexDefinition,
  by: readonly string[],
): readonly Note[] {
  if (definition.per === null || definition.inverse) return censoredNotes(groups, definition);
  const splitByGain = by.some((field) => /gain/i.test(field));
  const unlike = gains.some((a, i) => gains.slice(i + 1).some((b) => Math.abs(standardisedDifference(a, b) ?? 0) > gainsUnlike));
  const notes = splitByGain || unlike ? [said({ code: "shared-denominator" })] : [];
  return [...notes, ...censoredNotes(groups, definition)];
}

function censoredNotes(groups: readonly ReadGroup[], definition: IndexDefinition): readonly Note[] {
  if (!endsAtConsolidation(definition)) return [];
  const n = groups.reduce((sum, { columns }) => sum + columns.value.length, 0);
  const censored = n - groups.reduce((sum, { columns }) => sum + columns.measured, 0);
  return censored > n * 0.1 ? [said({ code: "heavily-censored", censored, n })] : [];
}
