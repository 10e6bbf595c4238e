import Database from "better-sqlite3";

/** Below this SQLite keeps a whole number in three bytes or fewer, which stand anywhere by chance: such numbers are looked for in the cells. */
export const leastInBytes = 2 ** 23;

/** Every place of a database, its -wal read with it, where a cell holds one of these numbers. */
export function numbersInCells(
  file: string,
  numbers: ReadonlyMap<number, string>,
): { readonly table: string; readonly of: string; readonly at: number }[] {
  const db = new Database(file, { readonly: true });
  try {
    const tables = db.prepare("select name from sqlite_schema where type = 'table'").pluck().all() as string[];
    return tables.flatMap((table) => {
      const rows = db
        .prepare(`select * from "${table.replaceAll('"', '""')}"`)
        .raw()
        .all() as unknown[][];
      return rows.flatMap((cells, at) =>
        cells.flatMap((cell) => {
          const of = typeof cell === "number" ? numbers.get(cell) : undefined;
          return of === undefined ? [] : [{ table, of, at }];
        }),
      );
    });
  } finally {
    db.close();
  }
}
