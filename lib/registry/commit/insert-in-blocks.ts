import type { Connection } from "@/db/open";
import type { Cells } from "./cells";

const rowsAtOnce = 64;

export type BlockInsert = {
  readonly add: (cells: Cells) => void;
  readonly isFull: () => boolean;
  /** Writes what was added; nothing is held before. */
  readonly flush: () => void;
};

/**
 * Inserts rows of an SQL table many at a time, and of its columns those in which anything stands: to call a statement and to bind a blank
 * cost more than to keep either.
 */
export function insertInBlocks(db: Connection, table: string, columns: readonly string[]): BlockInsert {
  const statements = new Map<string, { readonly run: (cells: Cells) => unknown }>();
  let rows: Cells[] = [];

  function statementOf(places: readonly number[]) {
    const name = `${rows.length} ${places.join(" ")}`;
    const known = statements.get(name);
    if (known) return known;
    const row = `(${places.map(() => "?").join(", ")})`;
    const names = places.map((place) => columns[place]).join(", ");
    const made = db.prepare(`INSERT INTO ${table} (${names}) VALUES ${rows.map(() => row).join(", ")}`);
    statements.set(name, made);
    return made;
  }

  return {
    add: (cells) => {
      rows.push(cells);
    },
    isFull: () => rows.length >= rowsAtOnce,
    flush: () => {
      if (rows.length === 0) return;
      const places = [...columns.keys()].filter((place) => rows.some((cells) => cells[place] !== null));
      const statement = statementOf(places);
      const bound: Cells[number][] = [];
      for (const cells of rows) for (const place of places) bound.push(cells[place] as Cells[number]);
      rows = [];
      statement.run(bound);
    },
  };
}
