import { fieldOf, healingStatuses, type Value } from "@/lib/codebook";
import type { Registry } from "@/lib/registry";
import type { Book } from "./book";
import { cellsOf } from "./cells";
import type { CasebookColumn } from "./columns";
import { windowStatuses } from "./worked-out";

/**
 * Rows in the order of a column, equal ones in the order of their cases; without a column, by case. Codes go in codebook order, and what
 * was not recorded stands last, whichever way the order runs.
 */
export async function sortRows(
  registry: Registry,
  book: Book,
  rows: readonly number[],
  column: CasebookColumn | null,
  descending: boolean,
): Promise<readonly number[]> {
  const way = descending ? -1 : 1;
  const byCase = (a: number, b: number) => (book.cases[a] as number) - (book.cases[b] as number) || a - b;
  if (column === null) return [...rows].sort((a, b) => way * byCase(a, b));
  const cells = await cellsOf(registry, book, column);
  const rank = rankOf(column);
  const ranks = new Map(rows.map((row) => [row, rank(cells(row))]));
  return [...rows].sort((a, b) => compare(ranks.get(a) ?? null, ranks.get(b) ?? null, way) || byCase(a, b));
}

type Rank = number | string | null;

function compare(a: Rank, b: Rank, way: number): number {
  if (a === b) return 0;
  if (a === null || b === null) return a === null ? 1 : -1;
  return a < b ? -way : way;
}

/** A value as what orders it: codes by their place in the codebook, S2 before S10. */
function rankOf(column: CasebookColumn): (value: Value) => Rank {
  const codes = codesOf(column);
  if (codes) return (value) => (value === null ? null : codes.indexOf(String(value)));
  if (column.id === "surgeon") return (value) => (value === null ? null : Number(String(value).slice(1)));
  return (value) => (typeof value === "boolean" ? Number(value) : value);
}

function codesOf({ from }: CasebookColumn): readonly string[] | null {
  if ("window" in from) return windowStatuses;
  if ("workedOut" in from) return from.workedOut === "healingStatus" ? healingStatuses : null;
  const field = fieldOf(from.table, from.field);
  return field.kind === "code" ? field.codes : null;
}
