import { once } from "../figure/once";
import type { Estimated, FigureSource, Limits } from "../figure/source";
import { type HealingCounts, type HealingMarkForFigure, isUnhealed } from "../healing/record";
import { spanOf } from "../place/span-of";

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

/** Marks of one fate, and their numbers as columns. */
export type Part = { readonly marks: readonly PlacedMark[]; readonly gainMm: readonly number[]; readonly days: readonly number[] };

export type Placed = {
  readonly healed: Part;
  /** Healed after further bone surgery. */
  readonly rescued: Part;
  readonly unhealed: Part;
  readonly count: number;
  /** Gains of all that healed; `null` of none. */
  readonly healedSpan: readonly [fromMm: number, toMm: number] | null;
};

/** Marks that have both numbers, parted once a group: every layer of every width asks for them. */
export const placed = once((group: DaysAgainstGainGroup): Placed => {
  const empty = () => ({ marks: [] as PlacedMark[], gainMm: [] as number[], days: [] as number[] });
  const [healed, rescued, unhealed] = [empty(), empty(), empty()];
  for (const mark of group.marks) {
    if (!isPlaced(mark)) continue;
    const part = isUnhealed(mark, group) ? unhealed : mark.rescued ? rescued : healed;
    part.marks.push(mark);
    part.gainMm.push(mark.gainMm);
    part.days.push(mark.days);
  }
  const count = healed.marks.length + rescued.marks.length + unhealed.marks.length;
  return { healed, rescued, unhealed, count, healedSpan: spanOf([...healed.gainMm, ...rescued.gainMm]) };
});

function isPlaced(mark: DaysAgainstGainMark): mark is PlacedMark {
  return mark.gainMm !== null && Number.isFinite(mark.gainMm) && Number.isFinite(mark.days);
}

/** The parts of all groups. */
export function partsOf(groups: readonly DaysAgainstGainGroup[]): readonly Part[] {
  return groups.flatMap((group) => {
    const { healed, rescued, unhealed } = placed(group);
    return [healed, rescued, unhealed];
  });
}
