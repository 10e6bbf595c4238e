import type { Case } from "../frames/cases";

/** One row of a measure: a segment, or a person with one of its segments. */
export type Row = {
  readonly person: number;
  /** `null` when the measure is of persons. */
  readonly segment: number | null;
  readonly value: number;
};

export type ReadRows = { readonly rows: readonly Row[]; readonly excluded: Readonly<Record<string, number>> };

/** Collects values and reasons, so that n and the excluded add up to what was supplied. */
export function collect<Item>(
  items: Iterable<Item>,
  read: (item: Item) => { readonly measured: true; readonly value: number } | { readonly measured: false; readonly because: string },
  who: (item: Item) => { readonly person: number; readonly segment: number | null },
): ReadRows {
  const rows: Row[] = [];
  const excluded: Record<string, number> = {};
  for (const item of items) {
    const reading = read(item);
    if (reading.measured) {
      const { person, segment } = who(item);
      rows.push({ person, segment, value: reading.value });
    } else excluded[reading.because] = (excluded[reading.because] ?? 0) + 1;
  }
  return { rows, excluded };
}

export function whoIs({ segment }: Case): { readonly person: number; readonly segment: number } {
  return { person: segment.person, segment: segment.segment };
}
