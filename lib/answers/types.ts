import type { HealingStatus } from "@/lib/codebook";

export type Note = { readonly code: string; readonly text: string };

export type Interval = {
  readonly estimate: number | null;
  readonly se: number | null;
  readonly df: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
};
export type Mean = Interval & { readonly n: number; readonly patients: number };
export type Median = {
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly bounds: readonly [low: number | null, high: number | null];
  readonly notes: readonly Note[];
};
export type DaysAtMedianGain = {
  /** Median gain of the analysed segments of the whole cohort, mm. */
  readonly gainMm: number;
  readonly days: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly daysPerCm: number | null;
} | null;

/** One group of a measure that ends at consolidation (ids.md §11, `measure`). `segments` = healed + censored + ended + Σ excluded. */
export type HealingGroup = {
  readonly key: Readonly<Record<string, string | number | boolean | null>>;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  /** Clocks that end at consolidation. */
  readonly healed?: number;
  readonly censored?: number;
  readonly ended?: number;
  /** Of the healed, those that a rescue came before. */
  readonly rescued?: number;
  /** Every other clock. */
  readonly n?: number;
  readonly excluded: Readonly<Record<string, number>>;
  readonly mean: Mean;
  readonly patientMean: Mean;
  readonly plain: Mean;
  readonly ratioOfSums: Mean;
  /** Standard deviation of the healed segments' values. */
  readonly deviation: number | null;
  readonly median: Median;
  readonly quartiles: { readonly lower: number | null; readonly upper: number | null };
  readonly daysAtMedianGain: DaysAtMedianGain;
  readonly medianFilmIntervalDays: number | null;
  readonly notes: readonly Note[];
  /** Every analysed segment; on the command line only when asked for. */
  readonly marks: readonly HealingMark[];
};
export type HealingMark = {
  readonly segment: number;
  readonly person: number;
  readonly status: HealingStatus;
  readonly rescued: boolean;
  /** In the measure's unit; of a segment not healed, how far it had come at its last film. */
  readonly value: number;
  readonly days: number;
  readonly gainMm: number | null;
};

export type Definition = {
  readonly id: string;
  readonly title: string;
  readonly from: string;
  readonly to: string;
  readonly per: string;
  readonly rescue: "counted" | "competing";
  readonly unit: string;
  readonly sentence: string;
};

export type Stamped = {
  readonly measure: string;
  readonly definition: Definition;
  readonly unit: string;
  readonly batch: number;
  readonly stamp: string;
  readonly state: { readonly batch: number; readonly erasures: number };
  readonly cohort: unknown;
  readonly method: string;
  /** *Data to QUARTER of the last file*: the latest quarter of surgery held, `2024 Q3`, or null in an empty registry. */
  readonly dataTo: string | null;
};
export type HealingAnswer = Stamped & {
  readonly by: readonly string[];
  readonly groups: readonly HealingGroup[];
  readonly notes: readonly Note[];
};

/** A share with its counts; `deff` is the design effect of several rows a patient, `plain` as if every row were another patient. */
export type Share = {
  readonly x: number;
  readonly n: number;
  readonly patients: number;
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly deff: number | null;
  readonly plain: { readonly lower: number | null; readonly upper: number | null };
};
export type Rate = {
  readonly events: number;
  readonly exposure: number;
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
};
export type CurvePoint = {
  readonly day: number;
  readonly atRisk: number;
  readonly estimate: number;
  readonly lower: number | null;
  readonly upper: number | null;
};

/** One group of any other measure: the counts, and what its kind answers. `segments` (of a person: `patients`) = n + Σ excluded. */
export type MeasureGroup = {
  readonly key: Readonly<Record<string, string | number | boolean | null>>;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  readonly n: number;
  readonly excluded: Readonly<Record<string, number>>;
  readonly mean?: Mean;
  readonly patientMean?: Mean;
  readonly plain?: Mean;
  readonly median?: Median;
  readonly quartiles?: { readonly lower: number | null; readonly upper: number | null };
  /** Standard deviation of the rows. */
  readonly deviation?: number | null;
  readonly share?: Share;
  readonly rate?: Rate;
  readonly classes?: Readonly<Record<string, number>>;
  readonly curve?: readonly CurvePoint[];
  readonly notes: readonly Note[];
  readonly rows?: readonly { readonly person: number; readonly segment: number | null; readonly value: number }[];
};
export type MeasureAnswer = Stamped & {
  readonly by: readonly string[];
  readonly groups: readonly MeasureGroup[];
  readonly notes: readonly Note[];
};
