import { decimals } from "../say/numbers";
import type { Axis } from "./axis";

/** Ticks at which a ratio is read; each set reads the same on both sides of one. */
const sets = [
  [0.9, 0.95, 1, 1.05, 1.1],
  [0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.4],
  [0.33, 0.5, 0.67, 1, 1.5, 2, 3],
  [0.1, 0.2, 0.5, 1, 2, 5, 10],
  [0.02, 0.1, 0.5, 1, 2, 10, 50],
  [0.001, 0.01, 0.1, 1, 10, 100, 1000],
] as const;

/** An axis of ratios: twice as many lies as far from one as half as many. `from` and `to` above zero. */
export function logAxis({ from, to, start, end }: { from: number; to: number; start: number; end: number }): Axis {
  const set = sets.find((ticks) => ticks[0] <= from && to <= (ticks.at(-1) ?? 0)) ?? sets[5];
  const low = [...set].reverse().find((tick) => tick <= from) ?? from;
  const high = set.find((tick) => tick >= to) ?? to;
  const at = (value: number) => start + ((Math.log(value) - Math.log(low)) / (Math.log(high) - Math.log(low))) * (end - start);
  const ticks = set.filter((tick) => tick >= low && tick <= high).map((value) => ({ value, at: at(value), text: plain(value) }));
  return { at, ticks, from: low, to: high };
}

/** As few digits as the tick has. */
function plain(value: number): string {
  return decimals(value, value < 1 || value % 1 !== 0 ? Math.max(1, String(value).split(".")[1]?.length ?? 0) : 0);
}
