import type { TableName } from "@/lib/codebook";
import type { Cell } from "../commit/cells";
import type { JoinView } from "./join-view";

/**
 * Rows of a table in the order of their natural keys, those of patients with several numbers merged and standing under the first. The
 * person is the first cell of every row.
 */
export function* inView(view: JoinView | null, table: TableName, rows: Iterable<readonly Cell[]>): Generator<readonly Cell[]> {
  if (view === null) {
    yield* rows;
    return;
  }
  const waiting = [...view.groups].sort((a, b) => (a.root.person < b.root.person ? -1 : 1));
  const before = function* (person: string | null): Generator<readonly Cell[]> {
    for (let next = waiting[0]; next && (person === null || next.root.person < person); next = waiting[0]) {
      waiting.shift();
      for (const { cells } of view.rowsOf(table, next)) yield cells;
    }
  };
  for (const row of rows) {
    const person = String(row[0]);
    if (view.isJoined(person)) continue;
    yield* before(person);
    yield row;
  }
  yield* before(null);
}
