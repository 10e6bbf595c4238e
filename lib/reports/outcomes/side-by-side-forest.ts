import type { CompareAnswer, Difference, FamilyAnswer, FamilyMember, HealingGroup, MeasureGroup } from "@/lib/answers";
import { type ForestRecord, type ForestRow, forestFigure, listed } from "@/lib/charts";
import { type Drawable, drawable } from "../told/drawable";
import { type Named, pWords, unitOfDifference } from "./side-by-side-words";

/** Ratios on one axis; differences on one axis for each unit. */
export function forestsOf(family: FamilyAnswer, named: Named): readonly Drawable[] {
  // what an index, or a risk difference, says beside its ratio stands in the table
  const drawn = family.members.flatMap((member) => {
    const all = differencesOf(member).map((one) => ({ member, ...one }));
    const ratios = all.filter(({ difference }) => difference.kind === "ratio");
    return ratios.length > 0 ? ratios : all;
  });
  const ratios = drawn.filter(({ difference }) => difference.kind === "ratio");
  const units = new Set(
    drawn.filter(({ difference }) => difference.kind === "difference").map(({ difference }) => unitOfDifference(difference).name),
  );
  const forests = [
    ...(ratios.length > 0
      ? [
          forest(
            family,
            "ratio",
            "ratio",
            ratios.map((one) => rowOf(one, named, 1)),
          ),
        ]
      : []),
    ...[...units].map((unit) => {
      const rows = drawn.filter(({ difference }) => difference.kind === "difference" && unitOfDifference(difference).name === unit);
      return forest(
        family,
        "difference",
        unit,
        rows.map((one) => rowOf(one, named, unit === "%" ? 100 : 1)),
      );
    }),
  ];
  return forests.map((record) => ({
    ...drawable(forestFigure, record),
    id: `comparison-${record.kind}-${record.unit.replace(/\W+/g, "-")}`,
  }));
}

type Drawn = { readonly member: FamilyMember; readonly answer: CompareAnswer; readonly difference: Difference };

function differencesOf({ crude, adjusted }: FamilyMember): readonly Pick<Drawn, "answer" | "difference">[] {
  return [crude, adjusted].flatMap((answer) => (answer ? answer.differences.map((difference) => ({ answer, difference })) : []));
}

function forest({ members }: FamilyAnswer, kind: ForestRecord["kind"], unit: string, rows: readonly ForestRow[]): ForestRecord {
  const [first] = members;
  if (!first) throw new RangeError("forest requires an outcome, received none");
  const { sides, batch, stamp, dataTo } = first.crude;
  const [a, b] = [sides[0].words, sides[1].words];
  const what = kind === "ratio" ? `${a} over ${b}` : `${a} less ${b}`;
  return {
    kind,
    unit,
    sides: [`less in ${a} than in ${b}`, `more in ${a}`],
    rows,
    batch,
    stamp,
    dataTo,
    definition: {
      title: `${what}, by outcome${kind === "ratio" ? "" : unitWords(unit)}`,
      sentence: `${what}; the first outcome’s reference stands here, each has its own below`,
    },
  };
}

/** Figures of one page are told apart by their unit. */
export function unitWords(unit: string): string {
  return unit === "" ? "" : `, in ${unit}`;
}

function rowOf({ member, answer, difference }: Drawn, { labels, test }: Named, scale: number): ForestRow {
  const scaled = (value: number | null) => (value === null ? null : value * scale);
  const adjusted = difference.adjustedFor.length > 0;
  const fields = listed(difference.adjustedFor.map((field) => (labels.get(field) ?? field).toLowerCase()));
  const refused = answer === member.adjusted && !adjusted;
  const p = test && difference.p !== null ? `p ${pWords(difference.p)}` : null;
  const detail = [adjusted ? `adjusted for ${fields}` : refused ? "no adjusted estimate" : null, p]
    .filter((text) => text !== null)
    .join("; ");
  return {
    label: difference.what,
    heading: member.crude.definition.title,
    estimate: scaled(difference.estimate),
    lower: scaled(difference.lower),
    upper: scaled(difference.upper),
    ...analysedIn(answer.groups),
    tested: difference.lower !== null,
    ...(detail === "" ? {} : { detail }),
  };
}

/** Segments (or patients) that an outcome was read on, and whose. */
export function analysedIn(groups: readonly (HealingGroup | MeasureGroup)[]): { readonly n: number; readonly patients: number } {
  const n = groups.reduce((sum, group) => sum + (("healed" in group ? group.healed : undefined) ?? group.n ?? 0), 0);
  const persons = new Set(groups.flatMap(personsIn));
  const counted = groups.reduce((sum, group) => sum + (("share" in group ? group.share?.patients : undefined) ?? group.patients), 0);
  return { n, patients: persons.size > 0 ? persons.size : counted };
}

function personsIn(group: HealingGroup | MeasureGroup): readonly number[] {
  if ("marks" in group)
    return group.marks.filter(({ status }) => group.healed === undefined || status === "healed").map(({ person }) => person);
  return (group.rows ?? []).map(({ person }) => person);
}
