import type { FindingCode } from "@/lib/codebook";
import { findingSeverities } from "@/lib/codebook";
import type { Finding } from "@/lib/intake";

/** A finding of the registry's own: about stripped rows, so without file, row and column, and never with a value. */
export function refusal(code: FindingCode, field: string | null, [found, expected, mend]: readonly [string, string, string]): Finding {
  return { code, severity: findingSeverities[code], file: null, row: null, column: null, field, found, expected, mend };
}

export const repeatsConflict = (table: string, field: string) =>
  refusal("repeats-conflict", field, [
    `two rows of one ${table} that differ`,
    "one value, or a blank beside it",
    "correct one of the two rows",
  ]);

export const halfNamed = (table: string) =>
  refusal("which-segment", null, [
    `a row of ${table} that names its segment in part`,
    "bone, side and surgery of one segment, or none of them for an event of the patient",
    "fill in what is missing of the three",
  ]);

export const lineDiffers = () =>
  refusal("line-differs", "line", [
    "a person with both dated and undated rows",
    "one line of days a person",
    "bring this person in with dates only",
  ]);
