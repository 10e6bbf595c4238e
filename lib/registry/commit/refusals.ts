import { type FindingCode, findingSeverities, type TableName } from "@/lib/codebook";
import type { RowFinding } from "../errors";

type Where = { readonly table: TableName | null; readonly place: number | null; readonly field: string | null };

/** A finding of the registry's own: about a stripped row, so without file and column, and never with a value. */
export function refusal(code: FindingCode, where: Where, [found, expected, mend]: readonly [string, string, string]): RowFinding {
  return { code, severity: findingSeverities[code], file: null, row: null, column: null, ...where, found, expected, mend };
}

export const repeatsConflict = (table: TableName, place: number, field: string) =>
  refusal("repeats-conflict", { table, place, field }, [
    `two rows of one ${table} that differ`,
    "one value, or a blank beside it",
    "correct one of the two rows",
  ]);

export const halfNamed = (table: TableName, place: number) =>
  refusal("which-segment", { table, place, field: null }, [
    `a row of ${table} that names its segment in part`,
    "bone, side and surgery of one segment, or none of them for an event of the patient",
    "fill in what is missing of the three",
  ]);

export const lineDiffers = (place: number) =>
  refusal("line-differs", { table: "person", place, field: "line" }, [
    "a person with both dated and undated rows",
    "one line of days a person",
    "bring this person in with dates only",
  ]);

export const notListed = (
  table: TableName,
  place: number,
  { field, codes }: { readonly field: string; readonly codes: readonly string[] },
) =>
  refusal("not-a-code", { table, place, field }, [
    "a code that the unit's own list hasn't",
    codes.length > 0 ? `one of: ${codes.join(", ")}` : "a code of the unit's own list, which is empty",
    "list the code in the unit's settings first, or correct the cell",
  ]);

export const correctionsDiffer = (found: number, asked: number) =>
  refusal("changed-since-last", { table: null, place: null, field: null }, [
    `${found} cells unlike a correction made by hand`,
    `${asked} such cells, about which a person was asked`,
    "bring the file in again, so that each is shown",
  ]);
