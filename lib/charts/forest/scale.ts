import { type Axis, axisOf } from "../axis/axis";
import { logAxis } from "../axis/log-axis";
import type { Limits } from "../figure/source";
import { spanOf } from "../place/span-of";
import { type ShownUnit, shownUnit } from "../say/shown-unit";
import type { ForestRecord } from "./record";

export function noDifference({ kind }: ForestRecord): number {
  return kind === "ratio" ? 1 : 0;
}

/** How an estimate is written: a ratio of groups has two decimals. */
export function forestUnit({ kind, unit }: ForestRecord, asked?: string): ShownUnit {
  const shown = shownUnit(unit, asked);
  return kind === "ratio" ? { ...shown, name: "", digits: 2, valueDigits: 2 } : shown;
}

/**
 * An axis about no difference: logarithmic of ratios, and always with room on both sides. A few very wide intervals don't press the rest
 * together: it reaches three times as far as the middle one of the intervals, and every estimate is on it.
 */
export function forestAxis(record: ForestRecord, unit: ShownUnit, { start, end }: { start: number; end: number }): Axis {
  if (record.kind === "ratio") {
    const [low, high] = extentOf(
      record.rows.map((row) => mapped(row, Math.log)),
      0.05,
    );
    return logAxis({ from: Math.exp(low), to: Math.exp(high), start, end });
  }
  const [from, to] = extentOf(record.rows, 0);
  return axisOf({ from, to, start, end, unit, ticks: end - start < 300 ? 4 : 6 });
}

function mapped({ estimate, lower, upper }: Limits, to: (value: number) => number): Limits {
  const safe = (value: number | null) => (value === null || value <= 0 ? null : to(value));
  return { estimate: safe(estimate), lower: safe(lower), upper: safe(upper) };
}

/** Least share of the axis on either side of no difference. */
const leastSide = 0.3;

function extentOf(rows: readonly Limits[], least: number): readonly [low: number, high: number] {
  const ends = rows.map(({ estimate, lower, upper }) => [estimate, lower, upper].filter((value) => value !== null));
  const [low, high] = spanOf([-least, least, ...ends.flat()]) ?? [-1, 1];
  const reaches = ends.flatMap((own) => (own.length === 0 ? [] : [Math.max(...own.map(Math.abs))])).sort((a, b) => a - b);
  const farthest = Math.max(...rows.map(({ estimate }) => Math.abs(estimate ?? 0)));
  const reach = Math.max(1.2 * farthest, 3 * (reaches[Math.floor((reaches.length - 1) / 2)] ?? 0), least);
  const [from, to] = [Math.max(low, -reach), Math.min(high, reach)];
  return [Math.min(from, -leastSide * to), Math.max(to, -leastSide * from)];
}
