import type { Where } from "@/lib/cohorts";
import {
  type PersonCase,
  type ProportionId,
  type ProportionNorm,
  type ProportionReading,
  proportionAt,
  proportionNorms,
  statureGainMm,
  whyNormDoesNotFit,
} from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { casesOf } from "../frames/cases";
import { personsOf } from "../frames/persons";
import { fieldsOfSplit, type Group, type GroupKey, splitBy } from "../healing/groups";
import { readMeasure } from "../measures/catalogue";
import { collect, type Row } from "../measures/measured";
import { type NumberSummary, summariseNumbers } from "../measures/numbers";
import { type Head, openQuestion } from "../question/open";

export type ProportionPoint = {
  readonly person: number;
  readonly before: number;
  readonly after: number;
  readonly beforeHow: "measured" | "derived";
  readonly afterHow: "measured" | "derived";
  readonly gainMm: number | null;
};
export type ProportionGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  readonly n: number;
  readonly excluded: Readonly<Record<string, number>>;
  readonly points: readonly ProportionPoint[];
  /** Persons whose readings were all measured, not worked out from segments. */
  readonly measured: number;
  readonly before: NumberSummary;
  readonly after: NumberSummary;
  readonly change: NumberSummary;
  readonly medianGainMm: number | null;
  /** Persons under 18 at surgery: their change is growth and surgery together. */
  readonly under18: number;
  /** For each norm published for the proportion, why it isn't held against this group; `null`: it fits every person. */
  readonly normsFit: Readonly<Record<string, string | null>>;
};
export type BeforeAfterAnswer = Head & {
  readonly measure: ProportionId;
  readonly unit: "ratio" | "mm";
  readonly definition: { readonly title: string; readonly sentence: string };
  readonly groups: readonly ProportionGroup[];
  /** Norms that are published for the ratio, each with its way of measuring; shown as bands, never as a target. */
  readonly norms: readonly ProportionNorm[];
};

/** A proportion before and after, person by person, with the change and the gain that came with it. */
export async function proportionBeforeAfter(
  registry: Registry,
  asked: { readonly measure: ProportionId; readonly by?: readonly string[]; readonly where?: Where; readonly asOf?: number },
): Promise<BeforeAfterAnswer> {
  const definition = readMeasure(asked.measure);
  if (!definition) throw new RangeError(`proportionBeforeAfter requires a proportion of the list of measures, received ${asked.measure}`);
  const head = await openQuestion(registry, {
    ...asked,
    measure: `${asked.measure}.before-after`,
    method: "means with t over persons; change within persons",
  });
  const cases = await casesOf(registry, head.state, asked.where ?? {}, fieldsOfSplit(head.by));
  const norms = proportionNorms.filter(({ of }) => of === asked.measure);
  const groups = await Promise.all(
    splitBy(cases, head.by).map(async (group) =>
      answerGroup(group, [...(await personsOf(registry, head.state, group.cases)).values()], asked.measure, norms),
    ),
  );
  return {
    ...head,
    measure: asked.measure,
    unit: asked.measure === "proportion-left-right" ? "mm" : "ratio",
    definition: { title: definition.title.replace(/, change$/, ""), sentence: definition.sentence },
    groups,
    norms,
  };
}

function answerGroup(
  group: Group,
  persons: readonly PersonCase[],
  measure: ProportionId,
  norms: readonly ProportionNorm[],
): ProportionGroup {
  const points: ProportionPoint[] = [];
  const { excluded } = collect(
    persons,
    (person) => {
      const before = proportionAt(person, measure, "before");
      const after = proportionAt(person, measure, "after");
      if (!before.measured) return before;
      if (!after.measured) return after;
      points.push(pointOf(person, before, after));
      return { measured: true, value: after.value - before.value };
    },
    ({ person }) => ({ person, segment: null }),
  );
  const measured = new Set(points.map(({ person }) => person));
  const read = persons.filter(({ person }) => measured.has(person));
  const normsFit = Object.fromEntries(norms.map((norm) => [normKey(norm), whyNormDoesNotFit(norm, read)]));
  const under18 = read.filter(({ ageAtSurgeryYears }) => ageAtSurgeryYears !== null && ageAtSurgeryYears < 18).length;
  return summarise(group, persons.length, points, { excluded, normsFit, under18 });
}

/** A norm is told by its set and sex: one set holds both sexes. */
export function normKey({ id, sex }: Pick<ProportionNorm, "id" | "sex">): string {
  return `${id}/${sex}`;
}

type Measured = Extract<ProportionReading, { measured: true }>;

function pointOf(person: PersonCase, before: Measured, after: Measured): ProportionPoint {
  const gain = statureGainMm(person);
  return {
    person: person.person,
    before: before.value,
    after: after.value,
    beforeHow: before.source,
    afterHow: after.source,
    gainMm: gain.measured ? gain.value : null,
  };
}

function summarise(
  { key, label, cases }: Group,
  patients: number,
  points: readonly ProportionPoint[],
  told: Pick<ProportionGroup, "excluded" | "normsFit" | "under18">,
): ProportionGroup {
  const rows = (value: (point: ProportionPoint) => number): Row[] =>
    points.map((point) => ({ person: point.person, segment: null, value: value(point) }));
  const gains = points.flatMap(({ gainMm }) => (gainMm === null ? [] : [gainMm]));
  return {
    key,
    label,
    patients,
    segments: cases.length,
    n: points.length,
    ...told,
    points,
    measured: points.filter(({ beforeHow, afterHow }) => beforeHow === "measured" && afterHow === "measured").length,
    before: summariseNumbers(rows(({ before }) => before)),
    after: summariseNumbers(rows(({ after }) => after)),
    change: summariseNumbers(rows(({ before, after }) => after - before)),
    medianGainMm: summariseNumbers(gains.map((value, person) => ({ person, segment: null, value }))).median.estimate,
  };
}
