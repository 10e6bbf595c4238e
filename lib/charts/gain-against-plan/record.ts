import type { Estimated, FigureSource, GroupCounts, NoteForFigure, ShareForFigure } from "../figure/source";

/** Length gained against length planned, by group; lengths in mm. */
export type GainPlanRecord = FigureSource & {
  /** Which plan: `planned at start` unless told. */
  readonly plan?: string;
  readonly tolerance: { readonly within: "mm" | "percent"; readonly limit: number };
  readonly groups: readonly GainPlanGroup[];
};

export type GainPlanGroup = GroupCounts & {
  /** segments = n + Σ excluded. */
  readonly n: number;
  /** Gain less plan, mm. */
  readonly error: Estimated;
  readonly within: ShareForFigure;
  readonly marks: readonly GainPlanMark[];
  readonly notes?: readonly NoteForFigure[];
};

export type GainPlanMark = {
  readonly segment: number;
  readonly plannedMm: number;
  readonly gainMm: number;
  readonly outcome: "reached" | "stopped-early" | "overshot";
  /** Code or words: why it was stopped early. */
  readonly reason?: string | null;
};
