import type { CompareAnswer, Difference, FamilyAnswer, FamilyMember, HealingGroup, MeasureGroup, SideAnswer } from "@/lib/answers";
import {
  type Column,
  count,
  decimals,
  listed,
  noValue,
  shareText,
  shownEstimate,
  shownLimits,
  shownUnit,
  tableFrom,
  words,
} from "@/lib/charts";
import type { ToldTable } from "../told/told";
import { rateText } from "./complication-words";
import { detectableText, estimateText, hasClassesAlone, intervalText, type Named, percentUnit, pWords } from "./side-by-side-words";

type Group = HealingGroup | MeasureGroup;
type Compared = Pick<CompareAnswer, "definition" | "unit" | "groups"> & { readonly sides: readonly SideAnswer[] };
type Side = { readonly answer: Compared; readonly group: Group; readonly words: string };

/** What each group had, before anything is compared. */
export function valuesTable(answers: readonly Compared[]): ToldTable {
  const rows = answers.flatMap((answer) =>
    answer.groups.map((group, i): Side => ({ answer, group, words: answer.sides[i]?.words ?? group.label })),
  );
  const columns: Column<Side>[] = [
    words("outcome", "Outcome", ({ answer }) => answer.definition.title),
    words("group", "Group", ({ words: name }) => name),
    count("segments", "Segments", ({ group }) => group.segments),
    count("patients", "Patients", ({ group }) => group.patients),
    count("measured", "Measured", ({ group }) => ("healed" in group ? group.healed : undefined) ?? group.n),
    words("value", "Value", ({ answer, group }) => valueText(group, answer.unit)),
  ];
  return { caption: "What each group had", table: tableFrom(columns, rows) };
}

function valueText(group: Group, unit: string): string {
  if ("share" in group && group.share) return shareText(group.share);
  if ("rate" in group && group.rate) return `${rateText(group)} ${unit}`;
  if ("curve" in group && group.curve) return incidenceText(group.curve);
  if (hasClassesAlone(group)) return classesText(group);
  return group.mean ? shownEstimate(group.mean, shownUnit(unit)) : noValue;
}

/** What had happened by the end of the first year. */
function incidenceText(curve: NonNullable<MeasureGroup["curve"]>): string {
  const point = curve.filter(({ day }) => day <= 365).at(-1);
  return point === undefined ? noValue : `${shownLimits(point, percentUnit)} by 12 months`;
}

/** `none 41, ii 3`: patients by their worst class. */
function classesText(group: Group): string {
  const counts = "classes" in group ? Object.entries(group.classes ?? {}) : [];
  return listed(counts.filter(([, n]) => n > 0).map(([name, n]) => `${name} ${n}`));
}

type Row = { readonly member: FamilyMember; readonly difference: Difference; readonly of: "crude" | "adjusted" };

/** Every difference: crude and adjusted, with what these groups could have shown. */
export function differencesTable({ members }: FamilyAnswer, named: Named): ToldTable {
  const rows = members.flatMap((member) =>
    (["crude", "adjusted"] as const).flatMap((of) =>
      (member[of]?.differences ?? []).map((difference): Row => ({ member, difference, of })),
    ),
  );
  const columns: Column<Row>[] = [
    words("outcome", "Outcome", ({ member }) => member.crude.definition.title),
    words("what", "What", ({ difference }) => difference.what),
    words("adjusted", "Adjusted for", (row) => adjustedText(row, named)),
    { id: "estimate", head: "Estimate", align: "end", cell: ({ difference }) => estimateText(difference) },
    { id: "interval", head: "95 % CI", align: "end", cell: ({ difference }) => intervalText(difference) },
    { id: "df", head: "df", align: "end", cell: ({ difference }) => (difference.df === null ? noValue : decimals(difference.df, 1)) },
    { id: "detectable", head: "Could have shown", align: "end", cell: ({ difference }) => detectableText(difference) },
    ...(named.test ? pColumns() : []),
  ];
  return { caption: "How they differ", table: tableFrom(columns, rows) };
}

/** A p value in a cell of its own. */
export function pCell(p: number | null): string {
  return p === null ? noValue : pWords(p);
}

function pColumns(): Column<Row>[] {
  return [
    { id: "p", head: "p", align: "end", cell: ({ difference }) => pCell(difference.p) },
    {
      id: "holm",
      head: "p by Holm",
      align: "end",
      cell: ({ member, difference }) => pCell(difference === member.lead ? member.holm : null),
    },
  ];
}

function adjustedText({ difference, of }: Row, { labels }: Named): string {
  if (difference.adjustedFor.length > 0) return listed(difference.adjustedFor.map((field) => (labels.get(field) ?? field).toLowerCase()));
  return of === "crude" ? "nothing" : "refused, see the notes";
}
