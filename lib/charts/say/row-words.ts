import { counted, listed } from "./numbers";

const nouns = {
  persons: "patient",
  bodyMeasures: "body measure",
  segments: "segment",
  visits: "visit",
  events: "event",
  scores: "score",
} as const;
/** Rows by the names of answers. */
export type RowCounts = Readonly<Record<keyof typeof nouns, number>>;

/** `12 patients, 20 segments and 3 visits`; nothing where every count is zero. */
export function rowWords(counts: RowCounts): string {
  const parts = Object.entries(nouns).flatMap(([name, noun]) => {
    const n = counts[name as keyof RowCounts];
    return n > 0 ? [counted(n, noun)] : [];
  });
  return parts.length === 0 ? "" : listed(parts);
}
