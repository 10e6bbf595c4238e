import type { Estimated, FigureSource, GroupCounts, Limits, NoteForFigure } from "../figure/source";

/** Two readings of one length (or angle) on each segment, by group: how far they agree. */
export type AgreementRecord = FigureSource & {
  readonly unit: string;
  /** The readings in words, first less second: `["gained", "planned at start"]`. */
  readonly between: readonly [first: string, second: string];
  readonly groups: readonly AgreementGroup[];
};

export type AgreementGroup = GroupCounts & {
  /** segments = n + Σ excluded. */
  readonly n: number;
  /** Mean of first less second. */
  readonly bias: Estimated;
  /** Within which 95 of a hundred single differences lie, each with its interval; `null` with fewer patients than limits need. */
  readonly limits: { readonly lower: Limits; readonly upper: Limits } | null;
  /** Of the differences themselves, whatever their shape: where early stops pull to one side, limits of ± 1.96 don’t tell it. */
  readonly spread?: { readonly p5: number; readonly median: number; readonly p95: number } | null;
  readonly marks: readonly { readonly segment: number; readonly first: number; readonly second: number }[];
  readonly notes?: readonly NoteForFigure[];
};
