import type { TableName } from "@/lib/codebook";
import type { Moment } from "../match/target";
import type { AnyRow } from "./blank-row";
import type { Draft, PlacedFact } from "./draft";
import type { Keyed } from "./keyed-drafts";

/** A stripped row of one table, with the number or moment of its columns in a one-sheet row (*Complication 2*, *Final height*). */
export type StrippedPart = { readonly table: TableName; readonly row: AnyRow; readonly nth: number | Moment | null };

/** A row of a file after the strip step: what goes to each table, and what there is to say about it. */
export type StrippedDraft = {
  readonly draft: Draft;
  readonly keyed: Keyed | null;
  /** `null`: the row alone doesn't tell. */
  line: "dated" | "undated" | null;
  parts: StrippedPart[];
  readonly facts: PlacedFact[];
};

export function say(stripped: StrippedDraft, fact: Omit<PlacedFact, "column"> & { column?: string | null }): void {
  stripped.facts.push({ column: null, ...fact });
}

/** A required cell without a value; said once, also where the cell's own fault has been said. */
export function missing(stripped: StrippedDraft, field: string, why = ""): void {
  if (stripped.facts.some((fact) => fact.field === field)) return;
  say(stripped, { code: "required-missing", found: "a blank cell", field, about: why === "" ? {} : { why } });
}

export function partIn(stripped: StrippedDraft, table: TableName): AnyRow | undefined {
  return stripped.parts.find((part) => part.table === table)?.row;
}
