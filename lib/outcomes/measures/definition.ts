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
