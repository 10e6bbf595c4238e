import type { SegmentRow } from "@/lib/codebook";
import type { Fact } from "../cells/cell-read";

/** Something to say about a stripped row, in the column of a field. */
export type RowFact = Fact & { readonly field: string };

/** What else is known where a segment is checked; a registry knows the row alone. */
export type SegmentContext = {
  /** The day of a field with day and month exchanged, on the person's line; `null` where there is none. */
  readonly swapped: (field: string) => number | null;
  readonly indication: string | null;
  readonly aetiology: string | null;
};
export type SegmentCheck = (row: SegmentRow, context: SegmentContext) => readonly RowFact[];

export const knownAlone: SegmentContext = { swapped: () => null, indication: null, aetiology: null };

/** A finding when a figure lies outside a range; nothing when there is no figure. */
export function outside(
  code: "out-of-hard-range" | "out-of-usual-range",
  value: number | null,
  [low, high]: readonly [number, number],
  { field, what, unit }: { field: string; what: string; unit: string },
): readonly RowFact[] {
  if (value === null || (value >= low && value <= high)) return [];
  return [{ code, field, found: `${what} ${Number(value.toFixed(2))} ${unit}`, about: { low, high, unit, what } }];
}

/** The distance of two days; `null` when one isn't there. */
export function between(from: number | null, to: number | null): number | null {
  return from === null || to === null ? null : to - from;
}
