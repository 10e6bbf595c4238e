import { fold } from "@/lib/codebook";
import { describe } from "../values/describe";
import { type ReadCell, readAs, unread } from "./cell-read";
import { alone, notUnderstood, type Suspect } from "./not-understood";
import type { Spellings } from "./read-code";

/** Reads a column of codes that the unit lists itself. Only listed codes are taken: a name can have the form of one. */
export function readListed(listed: readonly string[], said: Spellings = {}, suspect: Suspect = alone): ReadCell {
  const own = new Map(Object.entries(said).map(([text, code]) => [fold(text), code]));
  const codes = new Map(listed.map((code) => [fold(code), code]));
  const choices = listed.length > 0 ? listed.join(", ") : "codes of the unit’s own list, which is empty";
  return (cell) => {
    const code = own.get(fold(cell)) ?? codes.get(fold(cell));
    if (code === "") return readAs(null);
    if (code !== undefined && listed.includes(code)) return readAs(code);
    return notUnderstood(cell, unread("not-a-code", describe(cell), { choices }), suspect);
  };
}
