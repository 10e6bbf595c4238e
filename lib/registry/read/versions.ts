import { open } from "@/db/identities";
import type { Connection } from "@/db/open";
import { type Rows, type TableName, tableNames } from "@/lib/codebook";
import { columnsOfRow, fromVersionsOf, segmentColumn } from "./row-sql";
import { rowMaker } from "./rows";

/** What was held of one row from a batch (`since`) until another (`until`, or `null`: it still holds). Switching on `table` tells the row's type. */
export type RowVersion = {
  [T in TableName]: {
    readonly table: T;
    /** The identity of the row, stable for ever. */
    readonly entity: number;
    /** Of a segment, visit or event: its segment's identity; `null` otherwise. */
    readonly segmentEntity: number | null;
    readonly since: number;
    readonly until: number | null;
    readonly row: Rows[T];
  };
}[TableName];

type Cell = string | number | null;

function versionsOfTable(db: Connection, table: TableName, person: number): readonly RowVersion[] {
  const make = rowMaker(table);
  const rows = db
    .prepare(
      `SELECT i.entity, ${segmentColumn[table] ?? "NULL"}, v.since_batch, v.until_batch, ${columnsOfRow(table)} ${fromVersionsOf(table)}
       ORDER BY i.entity, v.since_batch`,
    )
    .raw()
    .all({ person }) as Cell[][];
  return rows.map(([entity = null, segment = null, since = null, until = null, ...cells]) => {
    const version = { table, entity: Number(entity), segmentEntity: segment === null ? null : Number(segment), since: Number(since) };
    // the row was made by the table's own maker
    return { ...version, until: until === open ? null : Number(until), row: make(cells) } as RowVersion;
  });
}

/** Every version of every row that stands under one number, tables in codebook order; none when there is no such person. */
export function versionsIn(db: Connection, person: number): readonly RowVersion[] {
  return tableNames.flatMap((table) => versionsOfTable(db, table, person));
}
