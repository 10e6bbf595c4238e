import type { TableName } from "@/lib/codebook";

/** What one row of a sheet is: a segment with all that stands beside it, or a row of one table. */
export type SheetKind = "one-sheet" | "persons" | "body-measures" | "visits" | "events" | "scores";

export const tableOfKind = {
  persons: "person",
  "body-measures": "bodyMeasure",
  visits: "visit",
  events: "event",
  scores: "score",
} as const satisfies Record<Exclude<SheetKind, "one-sheet">, TableName>;

export const sheetKinds: readonly SheetKind[] = ["one-sheet", "visits", "events", "scores", "body-measures", "persons"];

/** Fields without which a sheet isn't of that kind. */
export const needed: Readonly<Record<SheetKind, readonly string[]>> = {
  "one-sheet": [],
  visits: ["visitDay"],
  events: ["eventType"],
  scores: ["scoreCode", "scoreValue"],
  "body-measures": ["bodyDay"],
  persons: [],
};
