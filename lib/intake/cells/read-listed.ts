import { fold } from "@/lib/codebook";
import { describe } from "../values/describe";
import { type ReadCell, readAs, unread } from "./cell-read";
import type { ListedField } from "./field-kinds";
import { identifierIn } from "./identifier-in";
import type { Spellings } from "./read-code";

/** Reads a column of codes that the unit lists itself. Without a list every code of the right form is taken. */
export function readListed(field: ListedField, listed: readonly string[] | null, said: Spellings = {}): ReadCell {
  const own = new Map(Object.entries(said).map(([text, code]) => [fold(text), code]));
  const form = new RegExp(field.pattern);
  return (cell) => {
    const mine = own.get(fold(cell));
    if (mine !== undefined) return readAs(mine === "" ? null : mine);
    const code = fold(cell).replaceAll(" ", "-");
    const choices = listed && listed.length > 0 ? listed.join(", ") : "a short code of lower-case letters, digits and hyphens";
    const kind = identifierIn(cell);
    if (kind !== null) return unread("identifier-in-cell", describe(cell), { kind });
    if (!form.test(code) || (listed && listed.length > 0 && !listed.includes(code)))
      return unread("not-a-code", describe(cell), { choices });
    return readAs(code);
  };
}
