import { canonicalWhere, type Where } from "@/lib/cohorts";
import { type ComplicationMeasure, complicationMeasures, complicationSentence, type EndRule, type Scheme, schemeOf } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { eventRate } from "@/lib/stats";
import { casesOf } from "../frames/cases";
import { dataTo } from "../frames/data-to";
import { fieldsOfSplit, type Group, splitBy } from "../healing/groups";
import { said } from "../healing/said";
import { sharePatients, summariseShare } from "../measures/numbers";
import { answerCache } from "../question/cache";
import { keepQuestion } from "../question/keep";
import { type Question, stampOf } from "../question/stamp";
import { stateAsOf } from "../question/state";
import { version } from "../question/version";
import type { MeasureAnswer, MeasureGroup } from "../types";
import { classCounts, worstOf } from "./classes";
import { type Counted, type CountedSegment, type Counting, countEvents, countsOperations } from "./counted";
import { eventsOf, type HeldEvent } from "./events";
import { incidenceOf } from "./incidence";
import { operationsByPurpose, operationsOf } from "./operations";
import { rateRows, shareRows } from "./rows";
import { schemeNotes } from "./scheme-list";

export type ComplicationQuestion = {
  readonly measure: ComplicationMeasure["id"];
  readonly by?: readonly string[];
  readonly where?: Where;
  readonly asOf?: number;
  readonly scheme?: string;
  readonly endRule?: EndRule;
  readonly withoutPinSites?: boolean;
};

const methods = {
  rate: "events over exposure, linearised by patient on the log scale, t(G − 1)",
  share: "share with Wilson’s interval on the effective number of cases, clustered by patient",
  classes: "counts of patients by their heaviest class",
  curve: "Aalen–Johansen over segments, jackknife by patient",
} as const;
const cached = answerCache<MeasureAnswer>();

/**
 * A measure of complications by group, classes derived from the facts under a published scheme.
 * @throws RangeError when the measure or the scheme isn't known
 */
export async function complications(registry: Registry, asked: ComplicationQuestion): Promise<MeasureAnswer> {
  const definition = complicationMeasures.find(({ id }) => id === asked.measure);
  if (!definition) throw new RangeError(`complications requires a measure of complications, received ${asked.measure}`);
  const counting: Counting = {
    scheme: schemeOf(asked.scheme ?? "severity"),
    endRule: asked.endRule ?? "healed-and-bearing",
    withoutPinSites: asked.withoutPinSites ?? false,
    operationsOnly: countsOperations(definition.id),
  };
  const [where, by] = [asked.where ?? {}, asked.by ?? []];
  const state = await stateAsOf(registry, asked.asOf);
  const question: Question = {
    cohort: JSON.parse(canonicalWhere(where)),
    measure: definition.id,
    by,
    method: methods[definition.kind],
    options: { scheme: counting.scheme.id, endRule: counting.endRule, withoutPinSites: counting.withoutPinSites },
    seed: null,
    version,
    state,
  };
  const stamp = stampOf(question);
  await keepQuestion(registry, stamp, question);
  return cached(`${registry.folder} ${stamp}`, () => work(registry, state, definition, counting, where, by, stamp, question));
}

async function work(
  registry: Registry,
  state: State,
  definition: ComplicationMeasure,
  counting: Counting,
  where: Where,
  by: readonly string[],
  stamp: string,
  question: Question,
): Promise<MeasureAnswer> {
  const cases = await casesOf(registry, state, where, fieldsOfSplit(by));
  const events = await eventsOf(registry, state);
  const { id, title, unit } = definition;
  return {
    measure: id,
    definition: { id, title, from: "", to: "", per: "none", rescue: "counted", unit, sentence: complicationSentence(definition) },
    unit,
    batch: state.batch,
    stamp,
    state,
    cohort: question.cohort,
    method: question.method,
    dataTo: await dataTo(registry, state),
    by,
    groups: splitBy(cases, by).map((group) => answerGroup(group, events, definition, counting)),
    notes: isClassed(definition) ? schemeNotes(counting.scheme) : [],
  };
}

/** No class of a scheme enters how soon an event came, nor operations, which are counted by what they were for. */
function isClassed({ id, kind }: ComplicationMeasure): boolean {
  return kind !== "curve" && id !== "operations-per-segment";
}

function answerGroup(group: Group, events: readonly HeldEvent[], definition: ComplicationMeasure, counting: Counting): MeasureGroup {
  const procedures = group.cases.filter(({ segment }) => segment.procedure !== "transport");
  const counted = countEvents(procedures, events, counting);
  const transports = group.cases.length - procedures.length;
  const head = {
    key: group.key,
    label: group.label,
    patients: personsIn(group.cases.map(({ segment }) => segment.person)),
    segments: group.cases.length,
  };
  const reasons =
    definition.of === "segment" ? { "not-lengthening": transports, "not-looked-for": counted.notLookedFor } : personReasons(group, counted);
  return { ...head, ...bodyOf(definition, counted, counting.scheme, reasons) };
}

type Reasons = Readonly<Record<string, number>>;

function personReasons(group: Group, { segments }: Counted): Reasons {
  const looked = new Set(segments.map(({ one }) => one.segment.person));
  const persons = new Map<number, boolean>();
  for (const { segment } of group.cases)
    persons.set(segment.person, (persons.get(segment.person) ?? false) || segment.procedure !== "transport");
  const left = [...persons].filter(([person]) => !looked.has(person));
  return {
    "not-lengthening": left.filter(([, lengthened]) => !lengthened).length,
    "not-looked-for": left.filter(([, lengthened]) => lengthened).length,
  };
}

function bodyOf(
  definition: ComplicationMeasure,
  { segments }: Counted,
  scheme: Scheme,
  reasons: Reasons,
): Omit<MeasureGroup, "key" | "label" | "patients" | "segments"> {
  const byClass = classCounts(segments, scheme);
  switch (definition.kind) {
    case "share":
      return { ...shareOf(definition, segments), excluded: positive(reasons), classes: byClass };
    case "rate":
      return definition.id === "operations-per-segment"
        ? { ...rateOf(definition, operationsOf(segments), reasons), classes: operationsByPurpose(segments) }
        : { ...rateOf(definition, segments, reasons), classes: byClass };
    case "classes":
      return { ...worstOf(segments, scheme), excluded: positive(reasons), notes: [] };
    case "curve": {
      const incidence = incidenceOf(segments, { operationsOnly: definition.id === "complication-return-to-theatre" });
      return {
        n: incidence.n,
        excluded: positive({ ...reasons, "not-recorded": incidence.notFollowed }),
        curve: incidence.curve,
        notes: [],
      };
    }
  }
}

function shareOf(definition: ComplicationMeasure, segments: readonly CountedSegment[]) {
  const rows = shareRows(definition, segments);
  return { n: rows.length, ...(definition.of === "person" ? sharePatients(rows) : summariseShare(rows)) };
}

function rateOf(definition: ComplicationMeasure, segments: readonly CountedSegment[], reasons: Reasons) {
  const rows = rateRows(definition, segments);
  const noGain = definition.of === "person" ? 0 : segments.length - rows.length;
  const excluded = positive({ ...reasons, "no-gain": noGain });
  if (rows.length === 0) return { n: 0, excluded, rate: { events: 0, exposure: 0, estimate: null, lower: null, upper: null }, notes: [] };
  const { events, exposure, estimate, lower, upper, notes } = eventRate({
    events: rows.map((row) => row.events),
    exposure: rows.map((row) => row.exposure),
    patient: rows.map((row) => row.person),
    per: definition.id === "complication-events-per-10cm" ? 10 : 1,
  });
  return { n: rows.length, excluded, rate: { events, exposure, estimate, lower, upper }, notes: notes.map(said) };
}

function positive(reasons: Reasons): Record<string, number> {
  return Object.fromEntries(Object.entries(reasons).filter(([, n]) => n > 0));
}

function personsIn(persons: readonly number[]): number {
  return new Set(persons).size;
}
