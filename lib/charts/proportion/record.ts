import type { Estimated, FigureSource, GroupCounts, NoteForFigure } from "../figure/source";

/** A proportion (or a difference) of each person before and after, by group, against the norm that was chosen for it. */
export type ProportionRecord = FigureSource & {
  /** ratio, or mm of a difference. */
  readonly unit: string;
  readonly groups: readonly ProportionGroup[];
};

export type ProportionGroup = GroupCounts & {
  /** Persons with both readings: patients = n + Σ excluded. */
  readonly n: number;
  readonly before: Estimated;
  readonly after: Estimated;
  /** After less before. */
  readonly change: Estimated;
  /** Absent where no reference was chosen, or none fits the way of measuring. */
  readonly norm?: { readonly from: number; readonly to: number; readonly label: string } | null;
  readonly marks: readonly ProportionMark[];
  readonly notes?: readonly NoteForFigure[];
};

/** `derived`: worked out from the segments' gains, not read. */
export type ReadingSource = "measured" | "derived";
export type ProportionMark = {
  readonly person: number;
  readonly before: number;
  readonly after: number;
  readonly beforeHow: ReadingSource;
  readonly afterHow: ReadingSource;
};
