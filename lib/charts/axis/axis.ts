import { scaleLinear, ticks } from "d3";
import { decimals } from "../say/numbers";
import type { ShownUnit } from "../say/shown-unit";

export type Tick = { readonly at: number; readonly text: string; readonly value: number };
/** A scale in px that takes values as the record holds them. `from`, `to`: the domain, as the record holds it. */
export type Axis = {
  readonly at: (value: number) => number;
  readonly ticks: readonly Tick[];
  readonly from: number;
  readonly to: number;
};

export type AxisInput = {
  /** What must be on it, as the record holds it. */
  readonly from: number;
  readonly to: number;
  /** Px at both ends; `start` may lie below `end`, as of an axis that stands up. */
  readonly start: number;
  readonly end: number;
  readonly unit: ShownUnit;
  /** About how many ticks; times count in steps of the calendar. */
  readonly ticks?: number;
  /** Ends on ticks (the usual), or just where it was told to. */
  readonly nice?: boolean;
  readonly percent?: boolean;
};

/** A linear axis in the unit shown. An empty domain is widened; ends lie on ticks. */
export function axisOf({ from, to, start, end, unit, ticks: wanted = 6, nice = true, percent = false }: AxisInput): Axis {
  const [low, high] = widened(from * unit.perRecord, to * unit.perRecord);
  const step = stepFor(low, high, wanted, unit);
  const domain = nice ? [Math.floor(low / step + slack) * step, Math.ceil(high / step - slack) * step] : [low, high];
  const scale = scaleLinear(domain, [start, end]);
  const values = multiplesIn(domain as [number, number], step);
  const digits = percent ? 0 : digitsFor(step);
  return {
    at: (value) => scale(value * unit.perRecord),
    ticks: values.map((value) => ({
      at: scale(value),
      value: value / unit.perRecord,
      text: percent ? decimals(value * 100, 0) : decimals(value, digits),
    })),
    from: (domain[0] ?? 0) / unit.perRecord,
    to: (domain[1] ?? 1) / unit.perRecord,
  };
}

/** Rounding must not add a step. */
const slack = 1e-9;

function widened(low: number, high: number): [low: number, high: number] {
  if (!Number.isFinite(low) || !Number.isFinite(high)) return [0, 1];
  if (high > low) return [low, high];
  const pad = Math.max(Math.abs(low) * 0.1, 0.5);
  return [low - pad, high + pad];
}

/** Times are read in whole weeks, months and years of the clinic, not in powers of ten. */
const calendar: Readonly<Record<string, readonly number[]>> = {
  days: [5, 10, 15, 30, 60, 90, 180, 360, 720, 1440],
  months: [0.5, 1, 2, 3, 6, 12, 24, 48, 120],
};

function stepFor(low: number, high: number, wanted: number, { name }: ShownUnit): number {
  const found = calendar[name]?.find((step) => (high - low) / step <= wanted + 1);
  if (found !== undefined) return found;
  const [first = 0, second = 1] = ticks(low, high, wanted);
  return second > first ? second - first : high - low;
}

function multiplesIn([low, high]: readonly [number, number], step: number): number[] {
  const first = Math.ceil(low / step - slack);
  const last = Math.floor(high / step + slack);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * step);
}

/** As many decimals as tell the ticks apart. */
function digitsFor(step: number): number {
  for (let digits = 0; digits < 6; digits++) if (Math.abs(step - Number(step.toFixed(digits))) < step * 1e-6) return digits;
  return 6;
}
