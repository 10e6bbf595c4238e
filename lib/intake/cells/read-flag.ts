import { flagOf, fold } from "@/lib/codebook";
import { describe } from "../values/describe";
import { type ReadCell, readAs, unread } from "./cell-read";
import { identifierIn } from "./identifier-in";

const choices = "yes, no, or blank where it isn't known";

/** Reads a column of yes and no. A blank cell says nothing. */
export const readFlag: ReadCell = (cell) => {
  const flag = flagOf(fold(cell));
  if (flag !== undefined) return readAs(flag);
  const kind = identifierIn(cell);
  if (kind !== null) return unread("identifier-in-cell", describe(cell), { kind });
  if (cell.split(/\s+/).length > 6) return unread("free-text-in-code", describe(cell), { choices });
  return unread("not-a-code", describe(cell), { choices });
};
