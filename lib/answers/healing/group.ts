import { endsAtConsolidation, type IndexDefinition } from "@/lib/outcomes";
import { countPatients, sortedCopy } from "@/lib/stats";
import type { Case } from "../frames/cases";
import type { HealingGroup, HealingMark } from "../types";
import { type Columns, columnsOf } from "./columns";
import type { Group } from "./groups";
import { type ClockColumns, kinds } from "./read";
import { daysAtGain, meansOf, middleOf, noMean, ratioOf } from "./summaries";

export type ReadGroup = Group & {
  readonly patients: number;
  readonly columns: Columns;
  readonly marks: readonly HealingMark[];
  /** Of the measured that have one. */
  readonly filmIntervalDays: readonly number[];
  readonly rescued: number;
  readonly ended: number;
  readonly excluded: Readonly<Record<string, number>>;
};

/** What the clock read on every segment of a group; nothing is left out without its reason. */
export function readGroup(group: Group, clock: ClockColumns): ReadGroup {
  const { cases } = group;
  const columns = columnsOf(cases, clock);
  const rows = columns.place.map((at) => (cases[at] as Case).row);
  return {
    ...group,
    patients: countPatients(cases.map(({ row }) => clock.person[row] as number)),
    columns,
    marks: rows.map((row) => clock.marks[row]).filter((mark) => mark !== undefined),
    filmIntervalDays: rows.map((row) => clock.filmIntervalDays[row] as number).filter((days) => !Number.isNaN(days)),
    rescued: rows.reduce((sum, row) => sum + (clock.rescued[row] as number), 0),
    ended: cases.reduce((sum, { row }) => sum + Number(clock.kind[row] === kinds.ended), 0),
    excluded: excludedOf(cases, clock),
  };
}

/** How many a clock left out, by reason. */
export function excludedOf(cases: readonly Case[], { because }: ClockColumns): Readonly<Record<string, number>> {
  const excluded: Record<string, number> = {};
  for (const { row } of cases) {
    const reason = because[row];
    if (reason !== undefined) excluded[reason] = (excluded[reason] ?? 0) + 1;
  }
  return excluded;
}

/** The summaries of a group that was read; `medianGainMm` is the whole cohort's, so that groups are compared at one gain. */
export function summariseGroup(group: ReadGroup, definition: IndexDefinition, medianGainMm: number | null): HealingGroup {
  const { columns, marks, filmIntervalDays, patients, cases } = group;
  const ofMeasured = (column: readonly number[]) => column.slice(0, columns.measured);
  const { notes, ...means } = meansOf({ value: ofMeasured(columns.value), person: ofMeasured(columns.person) });
  const fitted = daysAtGain(columns, medianGainMm, definition);
  return {
    key: group.key,
    label: group.label,
    patients,
    segments: cases.length,
    ...countsOf(group, definition),
    excluded: group.excluded,
    ...means,
    // all days over all centimetres mean something for an index only
    ratioOfSums: definition.per === null || definition.inverse ? noMean : ratioOf(columns),
    deviation: means.plain.se === null ? null : means.plain.se * Math.sqrt(columns.measured),
    ...middleOf(columns),
    daysAtMedianGain: fitted.days,
    medianFilmIntervalDays: middle(filmIntervalDays),
    notes: [...notes, ...fitted.notes],
    marks,
  };
}

/** Clocks that end at consolidation say healed, censored and ended; every other says n. */
function countsOf({ columns: { measured, value }, ended, rescued }: ReadGroup, definition: IndexDefinition) {
  if (!endsAtConsolidation(definition)) return { n: measured };
  return { healed: measured, censored: value.length - measured, ended, rescued };
}

/** The ordinary median; `null` of nothing. */
export function middle(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = sortedCopy(values);
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] as number) + (sorted[Math.floor(half)] as number)) / 2;
}
