import type { CaseRows } from "./rows-of-case";

/** Where days of the person are counted from: the first operation. Without dates, two operations have no distance. */
export function firstSurgery({ person, segments }: CaseRows): number | null {
  const days = new Set(segments.map(({ row }) => row.surgeryDay));
  if (days.size === 0 || (person.row.line === "undated" && days.size > 1)) return null;
  return Math.min(...days);
}

/** A row that names a segment counts from its surgery, any other from the person's first. */
export function zeroFor(row: object, first: number | null): number | null {
  const own = "surgeryDay" in row ? row.surgeryDay : null;
  return typeof own === "number" ? own : first;
}
