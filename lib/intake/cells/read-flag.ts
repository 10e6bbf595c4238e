import { flagOf, fold } from "@/lib/codebook";
import { describe } from "../values/describe";
import { type ReadCell, readAs, unread } from "./cell-read";
import { alone, notUnderstood, type Suspect } from "./not-understood";

const choices = "yes, no, or blank where it isn’t known";

/** Reads a column of yes and no. A blank cell says nothing. */
export function readFlags(suspect: Suspect = alone): ReadCell {
  return (cell) => {
    const flag = flagOf(fold(cell));
    if (flag !== undefined) return readAs(flag);
    const code = cell.split(/\s+/).length > 6 ? "free-text-in-code" : "not-a-code";
    return notUnderstood(cell, unread(code, describe(cell), { choices }), suspect);
  };
}
