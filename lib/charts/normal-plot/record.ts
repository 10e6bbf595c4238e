import type { FigureSource, GroupCounts } from "../figure/source";

/** Residuals of a model beside the normal quantiles in their place, by group. */
export type NormalPlotRecord = FigureSource & { readonly groups: readonly NormalPlotGroup[] };

export type NormalPlotGroup = GroupCounts & {
  /** segments = n + Σ excluded. */
  readonly n: number;
  readonly healed: number;
  /** σ of the model; `null`: it can't be fitted. */
  readonly scale: number | null;
  readonly points: readonly { readonly segment: number; readonly residual: number; readonly normal: number }[];
};
