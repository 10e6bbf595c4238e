import { endsAtConsolidation, type IndexDefinition } from "@/lib/outcomes";
import { sortedCopy } from "@/lib/stats";
import type { Case } from "../frames/cases";
import type { HealingGroup } from "../types";
import { type Columns, columnsOf } from "./columns";
import type { Group } from "./groups";
import type { Censored, Measured, Read } from "./read";
import { daysAtGain, meansOf, medianOf, noMean, quartilesOf, ratioOf } from "./summaries";

export type ReadGroup = Group & {
  readonly measured: readonly Measured[];
  readonly censored: readonly Censored[];
  readonly columns: Columns;
  readonly ended: number;
  readonly excluded: Readonly<Record<string, number>>;
};

/** Read the clock on every segment of a group; nothing is left out without its reason. */
export function readGroup(group: Group, read: (one: Case) => Read): ReadGroup {
  const measured: Measured[] = [];
  const censored: Censored[] = [];
  const excluded: Record<string, number> = {};
  let ended = 0;
  for (const one of group.cases) {
    const reading = read(one);
    if (reading.reading === "measured") measured.push(reading);
    else if (reading.reading === "censored") censored.push(reading);
    else if (reading.reading === "ended") ended++;
    else excluded[reading.because] = (excluded[reading.because] ?? 0) + 1;
  }
  return { ...group, measured, censored, columns: columnsOf(measured, censored), ended, excluded };
}

/** The summaries of a group that was read; `medianGainMm` is the whole cohort's, so that groups are compared at one gain. */
export function summariseGroup(group: ReadGroup, definition: IndexDefinition, medianGainMm: number | null): HealingGroup {
  const { measured, censored, columns } = group;
  const ofMeasured = (column: readonly number[]) => column.slice(0, columns.measured);
  const { notes, ...means } = meansOf({ value: ofMeasured(columns.value), person: ofMeasured(columns.person) });
  const fitted = daysAtGain(columns, medianGainMm, definition);
  return {
    key: group.key,
    label: group.label,
    patients: new Set(group.cases.map(({ segment }) => segment.person)).size,
    segments: group.cases.length,
    ...countsOf(group, definition),
    excluded: group.excluded,
    ...means,
    // all days over all centimetres mean something for an index only
    ratioOfSums: definition.per === null || definition.inverse ? noMean : ratioOf(columns),
    deviation: means.plain.se === null ? null : means.plain.se * Math.sqrt(measured.length),
    median: medianOf(columns),
    quartiles: quartilesOf(columns),
    daysAtMedianGain: fitted.days,
    medianFilmIntervalDays: middle(measured.map(({ filmIntervalDays }) => filmIntervalDays).filter((days) => days !== null)),
    notes: [...notes, ...fitted.notes],
    marks: [...measured, ...censored].map(({ mark }) => mark),
  };
}

/** Clocks that end at consolidation say healed, censored and ended; every other says n. */
function countsOf({ measured, censored, ended }: ReadGroup, definition: IndexDefinition) {
  const rescued = measured.filter((row) => row.rescued).length;
  if (!endsAtConsolidation(definition)) return { n: measured.length };
  return { healed: measured.length, censored: censored.length, ended, rescued };
}

/** The ordinary median; `null` of nothing. */
export function middle(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = sortedCopy(values);
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] as number) + (sorted[Math.floor(half)] as number)) / 2;
}
