import type { FigureSource, Limits } from "../figure/source";
import type { CountedOf } from "../say/shown-estimate";

/** Differences, or ratios, of two groups over several outcomes, splits or series: a row each. */
export type ForestRecord = FigureSource & {
  readonly kind: "difference" | "ratio";
  /** Of a difference: its unit; of a ratio: `ratio`. */
  readonly unit: string;
  readonly of?: CountedOf;
  /** What the two sides of no difference mean, in words: `["fewer days in Nail", "more days in Nail"]`. */
  readonly sides: readonly [less: string, more: string];
  readonly rows: readonly ForestRow[];
};

export type ForestRow = Limits & {
  readonly label: string;
  /** Rows of one heading stand together under it. */
  readonly heading?: string;
  readonly n: number;
  readonly patients: number;
  /** Not tested or not comparable: drawn hollow. */
  readonly tested: boolean;
  /** What it is adjusted for, why it can't be compared: said under the label. */
  readonly detail?: string;
};
