import { type HealingAnswer, type HealingGroup, isHealing, type MeasureAnswer, type MeasureGroup } from "@/lib/answers";
import { tableText } from "./table-text";

const rounded = (value: number | null | undefined) => (value === null || value === undefined ? null : Number(value.toPrecision(4)));
const limits = ({ lower, upper }: { readonly lower: number | null; readonly upper: number | null }) =>
  lower === null ? null : `${rounded(lower)} to ${rounded(upper)}`;
const excluded = (group: { readonly excluded: Readonly<Record<string, number>> }) =>
  Object.values(group.excluded).reduce((sum, n) => sum + n, 0);

/** An answer as a person reads it on a terminal. */
export function textOfAnswer(answer: HealingAnswer | MeasureAnswer): string {
  const table = isHealing(answer) ? healingTable(answer.groups) : measureTable(answer.groups);
  const notes = [...new Set([...answer.notes, ...answer.groups.flatMap((group) => group.notes)].map(({ text }) => text))];
  const head = `${answer.definition.title}: ${answer.definition.sentence} (${answer.unit})`;
  return [head, "", table, "", ...notes, `Result reference ${answer.stamp}, batch ${answer.batch}.`].join("\n");
}

function healingTable(groups: readonly HealingGroup[]): string {
  const rows = groups.map((group) => [
    group.label,
    group.patients,
    group.segments,
    group.healed ?? group.n ?? null,
    group.censored ?? null,
    excluded(group),
    rounded(group.mean.estimate),
    limits(group.mean),
    rounded(group.median.estimate),
  ]);
  return tableText(["group", "patients", "segments", "measured", "unhealed", "excluded", "mean", "95 % CI", "median"], rows);
}

function measureTable(groups: readonly MeasureGroup[]): string {
  const rows = groups.map((group) => [
    group.label,
    group.patients,
    group.segments,
    group.n,
    excluded(group),
    ...estimateCells(group),
    classesText(group),
  ]);
  return tableText(["group", "patients", "segments", "n", "excluded", "of", "estimate", "95 % CI", "classes"], rows);
}

function estimateCells({ mean, share, rate, curve }: MeasureGroup): [string | null, number | null, string | null] {
  if (share) return [`${share.x}/${share.n}`, rounded(share.estimate), limits(share)];
  if (rate) return [`${rate.events}/${rounded(rate.exposure)}`, rounded(rate.estimate), limits(rate)];
  if (mean) return [null, rounded(mean.estimate), limits(mean)];
  const year = curve?.filter(({ day }) => day <= 365).at(-1);
  return year ? ["12 months", rounded(year.estimate), limits(year)] : [null, null, null];
}

function classesText({ classes }: MeasureGroup): string | null {
  if (!classes) return null;
  return Object.entries(classes)
    .filter(([, n]) => n > 0)
    .map(([name, n]) => `${name} ${n}`)
    .join(", ");
}
