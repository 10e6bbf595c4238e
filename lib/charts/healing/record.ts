import type { FigureSource, Limits, NoteForFigure } from "../figure/source";

/** What the figure of healing needs of its record: any answer that holds these can be drawn. Values are in the record's unit. */
export type HealingRecordForFigure = FigureSource & {
  readonly by: readonly string[];
  readonly groups: readonly HealingGroupForFigure[];
};

export type MeanForFigure = Limits & { readonly n: number; readonly patients: number };

/** Days to healing at the cohort's median gain, the unhealed in, by the time model. */
export type EqualGain = {
  readonly gainMm: number;
  readonly days: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
} | null;

export type HealingGroupForFigure = {
  readonly label: string;
  /** Of the whole group, excluded ones too: segments = healed + censored + ended + Σ excluded. */
  readonly segments: number;
  readonly patients: number;
  /** Clocks that end at consolidation; of the healed, `rescued` had further bone surgery first. */
  readonly healed?: number;
  readonly censored?: number;
  readonly ended?: number;
  readonly rescued?: number;
  /** Every other clock: how many were measured. */
  readonly n?: number;
  readonly excluded: Readonly<Record<string, number>>;
  /** Of the measured, clustered by patient. */
  readonly mean: MeanForFigure;
  readonly patientMean: MeanForFigure;
  readonly ratioOfSums: MeanForFigure;
  /** The mean as if every segment were another patient's. */
  readonly plain: MeanForFigure;
  /** Standard deviation of the measured. */
  readonly deviation: number | null;
  readonly median: Limits & { readonly bounds: readonly [low: number | null, high: number | null] };
  readonly quartiles: { readonly lower: number | null; readonly upper: number | null };
  readonly daysAtMedianGain: EqualGain;
  readonly medianFilmIntervalDays: number | null;
  /** Each segment that has a value: the measured and the censored. */
  readonly marks: readonly HealingMarkForFigure[];
  readonly notes?: readonly NoteForFigure[];
};

export type HealingMarkForFigure = {
  readonly segment: number;
  readonly status: string;
  readonly rescued: boolean;
  readonly value: number;
  readonly gainMm: number | null;
};

/** What counts of a group need: any record of healing has it. */
export type HealingCounts = Pick<
  HealingGroupForFigure,
  "segments" | "patients" | "healed" | "censored" | "ended" | "rescued" | "n" | "excluded"
>;

/** Whether the group's clock ends at consolidation: then its segments are healed or not, else they are just measured. */
export function isHealing(group: HealingCounts): boolean {
  return group.healed !== undefined;
}

/** Segments with a value in the mean. */
export function measuredIn(group: HealingCounts): number {
  return group.healed ?? group.n ?? 0;
}

/** Of a healing clock, a mark that has not healed is unhealed at its value; of every other clock each mark is measured. */
export function isUnhealed(mark: Pick<HealingMarkForFigure, "status">, group: HealingCounts): boolean {
  return isHealing(group) && mark.status !== "healed";
}

/** Σ excluded. */
export function excludedIn(group: HealingCounts): number {
  return Object.values(group.excluded).reduce((sum, n) => sum + n, 0);
}

/** Adds a count up over groups. */
export function total<Group extends HealingCounts>(groups: readonly Group[], count: (group: Group) => number): number {
  return groups.reduce((sum, group) => sum + count(group), 0);
}
