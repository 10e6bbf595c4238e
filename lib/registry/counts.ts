import type { TableName } from "@/lib/codebook";
import type { CountName, Counts } from "./types";

/** How answers and the ledger name the counts of a table's rows. */
export const countNames = {
  person: "persons",
  bodyMeasure: "bodyMeasures",
  segment: "segments",
  visit: "visits",
  event: "events",
  score: "scores",
} as const satisfies Record<TableName, CountName>;

/** Counts by the names of answers, from a count a table. */
export function countsOf(count: (table: TableName) => number): Counts {
  return {
    persons: count("person"),
    bodyMeasures: count("bodyMeasure"),
    segments: count("segment"),
    visits: count("visit"),
    events: count("event"),
    scores: count("score"),
  };
}

export function sumOf(counts: Counts): number {
  return Object.values(counts).reduce((sum, n) => sum + n, 0);
}

export function addCounts(a: Counts, b: Counts): Counts {
  return countsOf((table) => a[countNames[table]] + b[countNames[table]]);
}
