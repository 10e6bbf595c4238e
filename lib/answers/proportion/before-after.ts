import type { Where } from "@/lib/cohorts";
import { type ProportionId, type ProportionNorm, proportionAt, proportionNorms, statureGainMm } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { casesOf } from "../frames/cases";
import { personsOf } from "../frames/persons";
import { fieldsOfSplit, type GroupKey, splitBy } from "../healing/groups";
import { collect, type Row } from "../measures/measured";
import { type NumberSummary, summariseNumbers } from "../measures/numbers";
import { type Head, openQuestion } from "../question/open";

export type ProportionPoint = {
  readonly person: number;
  readonly before: number;
  readonly after: number;
  readonly source: "measured" | "derived";
  readonly gainMm: number | null;
};
export type ProportionGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly patients: number;
  readonly n: number;
  readonly excluded: Readonly<Record<string, number>>;
  readonly points: readonly ProportionPoint[];
  /** Persons whose readings were all measured, not worked out from segments. */
  readonly measured: number;
  readonly before: NumberSummary;
  readonly after: NumberSummary;
  readonly change: NumberSummary;
  readonly medianGainMm: number | null;
};
export type BeforeAfterAnswer = Head & {
  readonly measure: ProportionId;
  readonly unit: "ratio" | "mm";
  readonly groups: readonly ProportionGroup[];
  /** Norms that are published for the ratio, each with its way of measuring; shown as bands, never as a target. */
  readonly norms: readonly ProportionNorm[];
};

/** A proportion before and after, person by person, with the change and the gain that came with it. */
export async function proportionBeforeAfter(
  registry: Registry,
  asked: { readonly measure: ProportionId; readonly by?: readonly string[]; readonly where?: Where; readonly asOf?: number },
): Promise<BeforeAfterAnswer> {
  const head = await openQuestion(registry, {
    ...asked,
    measure: `${asked.measure}.before-after`,
    method: "means with t over persons; change within persons",
  });
  const cases = await casesOf(registry, head.state, asked.where ?? {}, [...fieldsOfSplit(head.by), "ageAtSurgeryYears"]);
  const groups = await Promise.all(
    splitBy(cases, head.by).map(async (group) => {
      const persons = [...(await personsOf(registry, head.state, group.cases)).values()];
      const points: ProportionPoint[] = [];
      const { excluded } = collect(
        persons,
        (person) => {
          const before = proportionAt(person, asked.measure, "before");
          const after = proportionAt(person, asked.measure, "after");
          if (!before.measured) return before;
          if (!after.measured) return after;
          const gain = statureGainMm(person);
          const source = before.source === "derived" || after.source === "derived" ? "derived" : "measured";
          points.push({
            person: person.person,
            before: before.value,
            after: after.value,
            source,
            gainMm: gain.measured ? gain.value : null,
          });
          return { measured: true, value: after.value - before.value };
        },
        ({ person }) => ({ person, segment: null }),
      );
      return summarise(group, persons.length, points, excluded);
    }),
  );
  const norms = proportionNorms.filter(({ of }) => of === asked.measure);
  return { ...head, measure: asked.measure, unit: asked.measure === "proportion-left-right" ? "mm" : "ratio", groups, norms };
}

function summarise(
  { key, label }: { readonly key: GroupKey; readonly label: string },
  patients: number,
  points: readonly ProportionPoint[],
  excluded: Readonly<Record<string, number>>,
): ProportionGroup {
  const rows = (value: (point: ProportionPoint) => number): Row[] =>
    points.map((point) => ({ person: point.person, segment: null, value: value(point) }));
  const gains = points.flatMap(({ gainMm }) => (gainMm === null ? [] : [gainMm]));
  return {
    key,
    label,
    patients,
    n: points.length,
    excluded,
    points,
    measured: points.filter(({ source }) => source === "measured").length,
    before: summariseNumbers(rows(({ before }) => before)),
    after: summariseNumbers(rows(({ after }) => after)),
    change: summariseNumbers(rows(({ before, after }) => after - before)),
    medianGainMm: summariseNumbers(gains.map((value, person) => ({ person, segment: null, value }))).median.estimate,
  };
}
