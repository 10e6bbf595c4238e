import type { SegmentCase } from "../case";
import type { NumberReading, Plan } from "../gain/gain";
import type { GrowthTable } from "../norms/growth";
import type { PersonCase } from "../proportion/person-case";

/** What the user chose beside the measure's id. */
export type MeasureOptions = {
  readonly plan: Plan;
  /** The unit's own tolerance of *goal reached*, mm. */
  readonly toleranceMm: number;
  readonly growthTable: GrowthTable;
  readonly scoreCode: string | null;
  /** Of the score: which way is better, and the least difference that matters; from the unit's own list. */
  readonly scoreBetter: "higher" | "lower" | null;
  readonly scoreMinimalDifference: number | null;
};

type Described = {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  /** `number`: a mean with its intervals; `share`: 1 or 0 a row. */
  readonly kind: "number" | "share";
  readonly sentence: string;
};
export type SegmentMeasure = Described & {
  readonly of: "segment";
  readonly read: (segment: SegmentCase, options: MeasureOptions) => NumberReading;
};
export type PersonMeasure = Described & {
  readonly of: "person";
  readonly read: (person: PersonCase, options: MeasureOptions) => NumberReading;
};

/** What a measure is read with when nothing else was chosen: the plan at start, a goal reached to 5 mm, the table for all ages to 20. */
export const usualOptions: MeasureOptions = {
  plan: "plannedGainMm",
  toleranceMm: 5,
  growthTable: "cdc-2000",
  scoreCode: null,
  scoreBetter: null,
  scoreMinimalDifference: null,
};
