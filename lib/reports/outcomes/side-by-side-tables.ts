import type { Difference, FamilyAnswer, FamilyMember, HealingGroup, MeasureGroup } from "@/lib/answers";
import {
  type Column,
  count,
  decimals,
  listed,
  noValue,
  shareText,
  shownEstimate,
  shownInterval,
  shownText,
  shownUnit,
  tableFrom,
  withUnit,
  words,
} from "@/lib/charts";
import type { ToldTable } from "../told/told";
import { rateText } from "./complication-words";
import { limitsText, type Named, pWords, unitOfDifference } from "./side-by-side-words";

type Group = HealingGroup | MeasureGroup;
type Side = { readonly member: FamilyMember; readonly group: Group; readonly words: string };

/** What each group had, before anything is compared. */
export function valuesTable({ members }: FamilyAnswer): ToldTable {
  const rows = members.flatMap((member) =>
    member.crude.groups.map((group, i): Side => ({ member, group, words: member.crude.sides[i === 0 ? 0 : 1].words })),
  );
  const columns: Column<Side>[] = [
    words("outcome", "Outcome", ({ member }) => member.crude.definition.title),
    words("group", "Group", ({ words: name }) => name),
    count("segments", "Segments", ({ group }) => group.segments),
    count("patients", "Patients", ({ group }) => group.patients),
    count("measured", "Measured", ({ group }) => ("healed" in group ? group.healed : undefined) ?? group.n),
    words("value", "Value", ({ member, group }) => valueText(group, member.crude.unit)),
  ];
  return { caption: "What each group had", table: tableFrom(columns, rows) };
}

function valueText(group: Group, unit: string): string {
  if ("share" in group && group.share) return shareText(group.share);
  if ("rate" in group && group.rate) return `${rateText(group)} ${unit}`;
  return group.mean ? shownEstimate(group.mean, shownUnit(unit)) : noValue;
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

function pColumns(): Column<Row>[] {
  const text = (p: number | null) => (p === null ? noValue : pWords(p));
  return [
    { id: "p", head: "p", align: "end", cell: ({ difference }) => text(difference.p) },
    {
      id: "holm",
      head: "p by Holm",
      align: "end",
      cell: ({ member, difference }) => text(difference === member.lead ? member.holm : null),
    },
  ];
}

function adjustedText({ difference, of }: Row, { labels }: Named): string {
  if (difference.adjustedFor.length > 0) return listed(difference.adjustedFor.map((field) => (labels.get(field) ?? field).toLowerCase()));
  return of === "crude" ? "nothing" : "refused, see the notes";
}

function estimateText(difference: Difference): string {
  return difference.estimate === null ? noValue : (limitsText(difference).split(" (")[0] ?? noValue);
}

function intervalText(difference: Difference): string {
  return shownInterval(difference, unitOfDifference(difference))?.replace("95 % CI ", "") ?? noValue;
}

function detectableText(difference: Difference): string {
  if (difference.detectable === null) return noValue;
  const unit = unitOfDifference(difference);
  return withUnit(shownText(difference.detectable, unit), unit);
}
