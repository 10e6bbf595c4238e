import { quantileSorted, sortedCopy } from "@/lib/stats";
import { type Axis, axisOf } from "../axis/axis";
import { spanOf } from "../place/span-of";
import type { ShownUnit } from "../say/shown-unit";
import type { DistributionRecord } from "./record";

/** Where values stand: what lies far out of the rest stands in a gutter at that end of the axis, still a mark each. */
export type DistributionScale = {
  readonly axis: Axis;
  readonly x: (value: number) => number;
  readonly left: number;
  readonly right: number;
  /** Centres of the gutters, or null. */
  readonly before: number | null;
  readonly beyond: number | null;
};

const gutterPx = 40;

export function distributionScale(
  record: DistributionRecord,
  unit: ShownUnit,
  { left, right }: { left: number; right: number },
): DistributionScale {
  const values = record.groups.flatMap(({ rows = [] }) => rows.map(({ value }) => value)).filter(Number.isFinite);
  const [low, high] = nearLimits(values);
  const near = values.filter((value) => value >= low && value <= high);
  const before = values.some((value) => value < low);
  const beyond = values.some((value) => value > high);
  const [start, end] = [before ? left + gutterPx : left, beyond ? right - gutterPx : right];
  const [from, to] = padded(spanOf([...near, ...intervalEnds(record).filter((value) => value >= low && value <= high)]) ?? [0, 1]);
  const axis = axisOf({ from, to, start, end, unit, ticks: end - start < 420 ? 5 : 8 });
  return {
    axis,
    x: (value) =>
      value < low ? left + gutterPx / 2 : value > high ? right - gutterPx / 2 : Math.min(end, Math.max(start, axis.at(value))),
    left: start,
    right: end,
    before: before ? left + gutterPx / 2 : null,
    beyond: beyond ? right - gutterPx / 2 : null,
  };
}

/** An interval is shown whole where that doesn't press the values together. */
function intervalEnds({ groups }: DistributionRecord): number[] {
  return groups.flatMap(({ mean }) => [mean?.lower ?? null, mean?.upper ?? null].filter((value) => value !== null));
}

/** What lies three quarters of the middle 96 of a hundred beyond them is far. */
function nearLimits(values: readonly number[]): readonly [low: number, high: number] {
  if (values.length === 0) return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const sorted = sortedCopy(values);
  const [low, high] = [quantileSorted(sorted, 0.02), quantileSorted(sorted, 0.98)];
  const reach = (high - low) * 0.75;
  // all but a few equal: nothing can be said to be far
  return reach === 0 ? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] : [low - reach, high + reach];
}

/** A little room at both ends, never over zero. */
function padded([low, high]: readonly [number, number]): readonly [number, number] {
  const pad = (high - low) * 0.02;
  return [low >= 0 ? Math.max(0, low - pad) : low - pad, high <= 0 ? Math.min(0, high + pad) : high + pad];
}
