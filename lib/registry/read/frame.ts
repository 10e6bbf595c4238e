import type { Connection } from "@/db/open";
import { fieldOf, type TableName } from "@/lib/codebook";
import type { Frame, FrameColumn } from "../types";
import { columnReader } from "./column-reader";
import { columnOf, fromStanding } from "./row-sql";

/** A frame's rows without its columns. */
export type FrameRows = Omit<Frame, "columns">;

const segmentColumn: Readonly<Partial<Record<TableName, string>>> = { segment: "i.entity", visit: "s.entity", event: "s.entity" };

/** Which rows of a table held as of a batch: their entities and their parents', in the order of the entities. */
export function readRows(db: Connection, table: TableName, batch: number): FrameRows {
  const from = fromStanding(table);
  const length = Number(db.prepare(`SELECT count(*) ${from}`).pluck().get({ batch }));
  const person = table === "person" ? "i.entity" : "p.entity";
  const segment = segmentColumn[table];
  const columns = [new Int32Array(length), new Int32Array(length), new Int32Array(length)] as const;
  let row = 0;
  for (const cells of db
    .prepare(`SELECT i.entity, ${person}, ${segment ?? -1} ${from} ORDER BY i.entity`)
    .raw()
    .iterate({ batch })) {
    const entities = cells as readonly (number | null)[];
    for (const [i, column] of columns.entries()) column[row] = entities[i] ?? -1;
    row += 1;
  }
  return { table, length, entity: columns[0], personEntity: columns[1], segmentEntity: segment ? columns[2] : null };
}

/**
 * Columns of those rows, read in one pass.
 * @throws RangeError when the table has no such field
 */
export function readColumns(
  db: Connection,
  { table, length }: FrameRows,
  batch: number,
  ids: readonly string[],
): ReadonlyMap<string, FrameColumn> {
  if (ids.length === 0) return new Map();
  const readers = ids.map((id) => columnReader(fieldOf(table, id), length));
  const columns = ids.map((id) => columnOf(table, id)).join(", ");
  let row = 0;
  for (const cells of db
    .prepare(`SELECT ${columns} ${fromStanding(table)} ORDER BY i.entity`)
    .raw()
    .iterate({ batch })) {
    const values = cells as readonly (string | number | null)[];
    for (const [i, reader] of readers.entries()) reader.take(values[i] ?? null, row);
    row += 1;
  }
  return new Map(
    ids.map((id, i) => [id, readers[i]?.column()] as const).filter((entry): entry is [string, FrameColumn] => entry[1] !== undefined),
  );
}
