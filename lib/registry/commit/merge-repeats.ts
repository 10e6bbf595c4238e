import type { RowFinding } from "../errors";
import { type Cell, type Cells, cellsOf, keyText, type Layout } from "./cells";
import { repeatsConflict } from "./refusals";

type Row = Readonly<Record<string, unknown>>;
/** A row with its key, and the place of the first of the rows that it was made of. */
export type Merged = { readonly key: string; readonly cells: Cells; readonly place: number };

/** Places of the rows that share a natural key: most rows stand alone, so most entries are one number. */
function placesByKey(layout: Layout, rows: readonly Row[], skip: ReadonlySet<number>): Map<string, number | number[]> {
  const places = new Map<string, number | number[]>();
  for (const [i, row] of rows.entries()) {
    if (skip.has(i)) continue;
    const key = keyText(layout, row);
    const before = places.get(key);
    if (before === undefined) places.set(key, i);
    else if (typeof before === "number") places.set(key, [before, i]);
    else before.push(i);
  }
  return places;
}

/** @returns the fields in which the two differ */
function addRow({ fields }: Layout, into: Cell[], cells: Cells): readonly string[] {
  const differing: string[] = [];
  for (const [i, cell] of cells.entries()) {
    if (cell === null || cell === into[i]) continue;
    if (into[i] === null) into[i] = cell;
    else differing.push(fields[i]?.[0] ?? "");
  }
  return differing;
}

/**
 * Rows of one table, those with the same natural key as one: equal and complementary values join, others are a `repeats-conflict`, since
 * the order of rows must not decide which of two values is kept. Made one by one, so that a long file isn't held twice. `skip`: places of rows that are left out.
 */
export function* mergeRepeats(layout: Layout, rows: readonly Row[], findings: RowFinding[], skip: ReadonlySet<number>): Generator<Merged> {
  for (const [key, places] of placesByKey(layout, rows, skip)) {
    if (typeof places === "number") {
      yield { key, cells: cellsOf(layout, rows[places] ?? {}), place: places };
      continue;
    }
    const [place = 0, ...more] = places;
    const cells = cellsOf(layout, rows[place] ?? {});
    for (const other of more) {
      const differing = addRow(layout, cells, cellsOf(layout, rows[other] ?? {}));
      findings.push(...differing.map((field) => repeatsConflict(layout.table, other, field)));
    }
    yield { key, cells, place };
  }
}
