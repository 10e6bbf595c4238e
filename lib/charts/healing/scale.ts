import { scaleLinear } from "d3";
import { sortedCopy } from "@/lib/stats";
import { type ClockUnit, inUnit } from "../say/units";
import { valuesIn } from "./by-value";
import type { HealingRecordForFigure } from "./record";

/** Where values stand on the page. `x` takes a value as the record holds it; what lies beyond the axis stands in the gutter at its right end. */
export type ValueScale = {
  readonly x: (value: number) => number;
  readonly isBeyond: (value: number) => boolean;
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
  readonly left: number;
  readonly right: number;
  /** Centre of the gutter, or null when nothing lies beyond. */
  readonly gutterX: number | null;
};

const gutterPx = 30;

/**
 * One axis for all groups. A few far values would press all others together: what lies more than half as far again as the 98th of a
 * hundred values stands in a gutter at the right end, still a mark each.
 */
export function valueScale(record: HealingRecordForFigure, unit: ClockUnit, { left, right }: { left: number; right: number }): ValueScale {
  const values = record.groups.flatMap(valuesIn).map((value) => inUnit(value, unit));
  const limit = farLimit(values);
  const near = values.filter((value) => value <= limit);
  const gutter = near.length < values.length;
  const end = gutter ? right - gutterPx : right;
  const [low, high] = spanOf(near);
  const scale = scaleLinear([low, high], [left, end]).nice(end - left < 420 ? 5 : 8);
  const digits = scale.tickFormat(end - left < 420 ? 5 : 8);
  return {
    x: (value) => Math.min(end, Math.max(left, scale(inUnit(value, unit)))),
    isBeyond: (value) => inUnit(value, unit) > limit,
    ticks: scale.ticks(end - left < 420 ? 5 : 8).map((tick) => ({ x: scale(tick), text: digits(tick) })),
    left,
    right: end,
    gutterX: gutter ? right - gutterPx / 2 : null,
  };
}

function farLimit(values: readonly number[]): number {
  const sorted = sortedCopy(values);
  const nearlyLast = sorted[Math.ceil(0.98 * sorted.length) - 1];
  return nearlyLast === undefined ? Number.POSITIVE_INFINITY : nearlyLast * 1.5;
}

function spanOf(values: readonly number[]): [low: number, high: number] {
  if (values.length === 0) return [0, 1];
  const low = values.reduce((a, b) => Math.min(a, b));
  const high = values.reduce((a, b) => Math.max(a, b));
  const pad = high > low ? (high - low) * 0.03 : Math.max(1, high * 0.1);
  return [Math.max(0, low - pad), high + pad];
}
