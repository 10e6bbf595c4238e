import type { Delimiter } from "../types";
import { guardCell } from "./guard-cell";

const quoted = /["\r\n,;\t]|^\s|\s$/;

/** Rows as delimited text (RFC 4180), CRLF at each line's end; cells that a spreadsheet would run are guarded. */
export function writeCsv(rows: readonly (readonly string[])[], delimiter: Delimiter = ","): string {
  return rows.map((cells) => `${cells.map(writeCell).join(delimiter)}\r\n`).join("");
}

function writeCell(cell: string): string {
  const safe = guardCell(cell);
  return quoted.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
