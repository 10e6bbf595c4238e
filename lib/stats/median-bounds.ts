import { type KaplanMeier, kaplanMeier } from "./kaplan-meier";
import type { Note } from "./notes";
import type { Estimate } from "./record";
import { sortedCopy } from "./summary/order";
import { requireTimeRows, type TimeRows } from "./survival/require-rows";
import { thresholds } from "./thresholds";

/** `estimate`, `lower`, `upper`: the Kaplan–Meier median with its limits; `bounds` hold whatever became of the unhealed. */
export interface MedianBounds extends Estimate {
  readonly bounds: readonly [low: number, high: number | null];
  /** By the curve; null where not reached. */
  readonly quartiles: KaplanMeier["quartiles"];
  readonly healed: number;
  readonly unhealed: number;
}

/**
 * Between which values the median lies when some bones had not healed on their last film, without any assumption about them.
 * Low: every unhealed bone heals on that film; high: it never heals. Of each the ordinary median, the middle of the two middle values
 * for an even number; high is null when a middle value is *never*. Low is never above the Kaplan–Meier estimate, which can lie below
 * the ordinary median where its curve is flat at exactly one half.
 * Bounds by worst cases: common practice, no source.
 * @throws RangeError, TypeError as `kaplanMeier`, and when a row enters late: bounds need every bone from the start
 * @example medianBounds({ times: [20, 30, 40, 50], event: [1, 1, 0, 1] }).bounds // => [35, 40]
 * @example medianBounds({ times: [20, 30, 40], event: [1, 0, 0] }).bounds // => [30, null]
 */
export function medianBounds({ confidence = 0.95, ...rows }: Omit<TimeRows, "entry"> & { readonly confidence?: number }): MedianBounds {
  if ("entry" in rows) throw new RangeError("medianBounds requires rows under observation from the start, received entry");
  requireTimeRows("medianBounds", rows);
  const { estimate, lower, upper, quartiles, events, n, patients, notes } = kaplanMeier({ ...rows, confidence });
  const low = ordinaryMedian(Array.from(rows.times));
  const high = ordinaryMedian(Array.from(rows.times, (time, row) => (rows.event[row] ? time : Infinity)));
  return {
    estimate,
    se: null,
    df: null,
    lower,
    upper,
    bounds: [estimate === null ? low : Math.min(low, estimate), Number.isFinite(high) ? high : null],
    quartiles,
    healed: events,
    unhealed: n - events,
    n,
    patients,
    method: "Kaplan–Meier median, bounds by best and worst case of the unhealed",
    convention: "middle of the two middle values for an even number; upper null when a middle value is never",
    notes: notesOf(notes, n - events, n),
  };
}

/** Infinite when one of the values in the middle is. */
function ordinaryMedian(values: readonly number[]): number {
  const sorted = sortedCopy(values);
  const half = values.length / 2;
  return ((sorted[Math.ceil(half) - 1] as number) + (sorted[Math.floor(half)] as number)) / 2;
}

function notesOf(notes: readonly Note[], unhealed: number, n: number): readonly Note[] {
  return unhealed > thresholds.shareCensored * n ? [...notes, { code: "heavily-censored", censored: unhealed, n }] : notes;
}
