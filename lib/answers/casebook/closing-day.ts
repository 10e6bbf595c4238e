import { dayNumber } from "@/lib/intake";
import type { Batch } from "@/lib/registry";

/**
 * The day up to which the data could tell, as days since 1970: that of the last file brought in. `null` when none was.
 */
export function closingDay(batches: readonly Batch[], asOf: number): number | null {
  const last = batches.findLast(({ batch, kind }) => batch <= asOf && kind === "intake");
  return last ? Math.floor(Date.parse(last.at) / 86_400_000) : null;
}

/**
 * Days that could have passed since a surgery of which only the quarter (or year) is known: from its middle, so that half a quarter
 * (half a year) may be wrong.
 */
export function daysSince(surgeryYear: number, surgeryQuarter: number | null, closing: number): number {
  const middle = surgeryQuarter === null ? dayNumber(surgeryYear, 7, 2) : dayNumber(surgeryYear, surgeryQuarter * 3 - 1, 15);
  return closing - middle;
}
