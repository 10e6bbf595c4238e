import { aliasIndex } from "../match/aliases";
import { lookUp } from "../match/lookup";
import { readHeader } from "../match/read-header";
import { sheetKinds } from "../match/sheet-kind";
import { looksLikeValue } from "../values/describe";
import type { Record } from "./records";

const searchedRows = 25;

/** Index of the record that holds the headers, titles above it passed over; `null` when no record looks like headers. */
export function findHeaderRow(records: readonly Record[]): number | null {
  const top = records.slice(0, searchedRows);
  const filled = top.map(({ cells }) => cells.filter((cell) => cell.trim() !== "").length);
  const widest = Math.max(...filled);
  const first = filled.findIndex((count) => count >= Math.max(1, widest / 2) && count >= Math.min(2, widest));
  if (first < 0) return null;
  if (recognised((top[first] as Record).cells) >= 2) return first;
  const known = top.map(({ cells }) => recognised(cells));
  const most = Math.max(...known);
  if (most >= 3) return known.indexOf(most);
  return mostlyValues((top[first] as Record).cells) ? null : first;
}

/** How many cells are headers known here, of whatever kind of sheet. */
export function recognised(cells: readonly string[]): number {
  const isKnown = (cell: string) => {
    const read = readHeader(cell);
    return read.dropped !== null || sheetKinds.some((kind) => lookUp(read, aliasIndex(kind)) !== null);
  };
  return cells.filter((cell) => cell.trim() !== "" && isKnown(cell)).length;
}

function mostlyValues(cells: readonly string[]): boolean {
  const said = cells.filter((cell) => cell.trim() !== "");
  return said.filter(looksLikeValue).length * 2 >= said.length;
}
