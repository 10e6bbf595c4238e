import type { Finding } from "@/lib/intake";
import { type Cell, type Cells, cellsOf, keyText, type Layout } from "./cells";
import { repeatsConflict } from "./refusals";

type Row = Readonly<Record<string, unknown>>;
export type Merged = { readonly key: string; readonly cells: Cells };

/** Places of the rows that share a natural key: most rows stand alone, so most entries are one number. */
function placesByKey(layout: Layout, rows: readonly Row[]): Map<string, number | number[]> {
  const places = new Map<string, number | number[]>();
  for (const [i, row] of rows.entries()) {
    const key = keyText(layout, row);
    const before = places.get(key);
    if (before === undefined) places.set(key, i);
    else if (typeof before === "number") places.set(key, [before, i]);
    else before.push(i);
  }
  return places;
}

function addRow(layout: Layout, into: Cell[], cells: Cells, findings: Finding[]): void {
  for (const [i, cell] of cells.entries()) {
    if (cell === null || cell === into[i]) continue;
    if (into[i] === null) into[i] = cell;
    else findings.push(repeatsConflict(layout.table, layout.fields[i]?.[0] ?? ""));
  }
}

/**
 * Rows of one table, those with the same natural key as one: equal and complementary values join, others are a `repeats-conflict`, since
 * the order of rows must not decide which of two values is kept. Made one by one, so that a long file isn't held twice.
 */
export function* mergeRepeats(layout: Layout, rows: readonly Row[], findings: Finding[]): Generator<Merged> {
  for (const [key, places] of placesByKey(layout, rows)) {
    const [first, ...more] = (typeof places === "number" ? [places] : places).map((i) => cellsOf(layout, rows[i] ?? {}));
    if (!first) continue;
    for (const cells of more) addRow(layout, first, cells, findings);
    yield { key, cells: first };
  }
}
