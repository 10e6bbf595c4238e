import { canonicalWhere, fieldsNamed, type Where } from "@/lib/cohorts";
import { isLeg, type MeasureOptions, type PersonMeasure, type SegmentMeasure, usualOptions } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { type Case, casesOf } from "../frames/cases";
import { dataTo } from "../frames/data-to";
import { personsOf } from "../frames/persons";
import { fieldsOfSplit, type Group, splitBy } from "../healing/groups";
import { seed } from "../healing/median-interval";
import { answerCache } from "../question/cache";
import { keepQuestion } from "../question/keep";
import { type Question, stampOf } from "../question/stamp";
import { stateAsOf } from "../question/state";
import { version } from "../question/version";
import type { MeasureAnswer, MeasureGroup } from "../types";
import { readMeasure } from "./catalogue";
import { collect, type ReadRows, whoIs } from "./measured";
import { sharePatients, summariseNumbers, summariseShare } from "./numbers";
import { withScores } from "./scores";

export type MeasureQuestion = {
  readonly measure: string;
  readonly by?: readonly string[];
  readonly where?: Where;
  readonly asOf?: number;
  readonly options?: Partial<MeasureOptions>;
};

const methods = {
  number: "mean (CR2 by patient, Satterthwaite df); mean of patient means (t); median (patient bootstrap)",
  share: "share with Wilson’s interval on the effective number of cases, clustered by patient",
} as const;
const cached = answerCache<MeasureAnswer>(({ groups }) => groups.reduce((sum, { rows = [] }) => sum + rows.length, 0));

/**
 * A measure of segments or of persons by group. A person counts in every group in which one of its segments falls.
 * @throws RangeError when no such measure is known
 */
export async function measure(registry: Registry, asked: MeasureQuestion): Promise<MeasureAnswer> {
  const definition = readMeasure(asked.measure);
  if (!definition) throw new RangeError(`measure requires an id of the list of measures, received ${asked.measure}`);
  const [where, by] = [asked.where ?? {}, asked.by ?? []];
  const state = await stateAsOf(registry, asked.asOf);
  const settings = await registry.settings(state.batch);
  const options: MeasureOptions = {
    ...usualOptions,
    toleranceMm: settings.toleranceMm,
    ...asked.options,
  };
  const question: Question = {
    cohort: JSON.parse(canonicalWhere(where)),
    measure: definition.id,
    by,
    method: methods[definition.kind],
    options,
    seed,
    version,
    state,
  };
  const stamp = stampOf(question);
  await keepQuestion(registry, stamp, question);
  return cached(`${registry.folder} ${stamp}`, () => work(registry, state, definition, options, where, by, stamp, question));
}

async function work(
  registry: Registry,
  state: State,
  definition: SegmentMeasure | PersonMeasure,
  options: MeasureOptions,
  where: Where,
  by: readonly string[],
  stamp: string,
  question: Question,
): Promise<MeasureAnswer> {
  const cases = await casesOf(registry, state, where, fieldsOfSplit(by));
  const boneNamed = fieldsOfSplit(by).includes("bone") || fieldsNamed(where).has("bone");
  const asked = await withScores(registry, state, definition, splitBy(cases, by), options);
  const readings = await Promise.all(
    asked.map(async ({ group, options: own }) =>
      definition.of === "segment" ? ofSegments(group, definition, own, boneNamed) : ofPersons(registry, state, group, definition, own),
    ),
  );
  const { id, unit, sentence, title } = definition;
  return {
    measure: id,
    definition: { id, title, from: "", to: "", per: "none", rescue: "counted", unit, sentence },
    unit,
    batch: state.batch,
    stamp,
    state,
    cohort: question.cohort,
    method: question.method,
    dataTo: await dataTo(registry, state),
    by,
    groups: asked.map(({ group }, i) => summarise(group, readings[i] as ReadRows, definition)),
    notes: [],
  };
}

function ofSegments(group: Group, definition: SegmentMeasure, options: MeasureOptions, boneNamed: boolean): ReadRows {
  const read = ({ segment }: Case) => {
    if (segment.procedure !== "transport" && !boneNamed && !isLeg(segment.bone)) return { measured: false, because: "bone-apart" } as const;
    return definition.read(segment, options);
  };
  return collect(group.cases, read, whoIs);
}

async function ofPersons(
  registry: Registry,
  state: State,
  group: Group,
  definition: PersonMeasure,
  options: MeasureOptions,
): Promise<ReadRows> {
  const persons = await personsOf(registry, state, group.cases);
  return collect(
    persons.values(),
    (person) => definition.read(person, options),
    ({ person }) => ({ person, segment: null }),
  );
}

function summarise(
  group: Group,
  { rows, excluded }: ReadRows,
  { kind, of }: Pick<SegmentMeasure | PersonMeasure, "kind" | "of">,
): MeasureGroup {
  const head = {
    key: group.key,
    label: group.label,
    patients: new Set(group.cases.map(({ segment }) => segment.person)).size,
    segments: group.cases.length,
    n: rows.length,
    excluded,
    rows,
  };
  if (kind === "number") return { ...head, ...summariseNumbers(rows) };
  return { ...head, ...(of === "person" ? sharePatients(rows) : summariseShare(rows)) };
}
