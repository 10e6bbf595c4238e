import { once } from "../figure/once";
import type { Estimated, FigureSource, Limits } from "../figure/source";
import type { HealingCounts, HealingMarkForFigure } from "../healing/record";

/** Days to healing against length gained, with a straight line a group. Groups of a healing answer fit, once their line stands beside them. */
export type DaysAgainstGainRecord = FigureSource & {
  readonly groups: readonly DaysAgainstGainGroup[];
  /** What the comparison at equal gain says, as the answer says it. */
  readonly said?: string | null;
};

export type DaysAgainstGainGroup = HealingCounts & {
  readonly label: string;
  readonly line: GainLine | null;
  /** Days at the gain at which groups are compared, the unhealed in. */
  readonly daysAtMedianGain?: (DaysWithLimits & { readonly gainMm: number }) | null;
  readonly marks: readonly DaysAgainstGainMark[];
};
type DaysWithLimits = { readonly days: number | null; readonly lower: number | null; readonly upper: number | null };

/** days = fixedDays + daysPerCm · cm, over the healed, clustered by patient. */
export type GainLine = {
  readonly fixedDays: Limits;
  readonly daysPerCm: Limits;
  readonly n: Estimated["n"];
  readonly patients: Estimated["patients"];
};

/** Days from the clock's start to consolidation, or, of the unhealed, to their last film. Without a gain a mark isn't drawn. */
export type DaysAgainstGainMark = Pick<HealingMarkForFigure, "segment" | "status" | "rescued" | "gainMm"> & { readonly days: number };

export type PlacedMark = DaysAgainstGainMark & { readonly gainMm: number };

/** Marks that have both numbers, picked once a group: every layer asks for them. */
export const drawable = once(({ marks }: DaysAgainstGainGroup): readonly PlacedMark[] =>
  marks.filter((mark): mark is PlacedMark => mark.gainMm !== null && Number.isFinite(mark.gainMm) && Number.isFinite(mark.days)),
);
