import type { Connection } from "@/db/open";
import { fieldOf, fieldsOf, type TableName } from "@/lib/codebook";
import type { Frame, FrameColumn } from "../types";
import { columnReader } from "./column-reader";
import { columnOf, fromByEntity, fromStanding, segmentColumn } from "./row-sql";

/** A frame's rows without its columns, in the order of their entities. */
export type FrameRows = Omit<Frame, "columns">;

/** Which rows of a table held as of a batch: their entities and their parents', in the order of the entities. */
export function readRows(db: Connection, table: TableName, batch: number): FrameRows {
  const from = fromStanding(table);
  const person = table === "person" ? "i.entity" : "p.entity";
  const segment = segmentColumn[table];
  const entity: number[] = [];
  const persons: number[] = [];
  const segments: number[] = [];
  const rows = db.prepare(`SELECT i.entity, ${person}, ${segment ?? -1} ${from} ORDER BY i.entity`).raw();
  for (const cells of rows.iterate({ batch }) as Iterable<readonly (number | null)[]>) {
    entity.push(cells[0] ?? -1);
    persons.push(cells[1] ?? -1);
    segments.push(cells[2] ?? -1);
  }
  const [entities, segmentEntities] = [Int32Array.from(entity), segment ? Int32Array.from(segments) : null];
  return { table, length: entity.length, entity: entities, personEntity: Int32Array.from(persons), segmentEntity: segmentEntities };
}

/** Cells of merged rows by their entity, in codebook order: they stand in the place of what the tables hold. */
export type MergedCells = ReadonlyMap<number, readonly Cell[]>;
type Cell = string | number | null;

/**
 * Columns of those rows, read in one pass.
 * @throws RangeError when the table has no such field
 */
export function readColumns(
  db: Connection,
  rows: FrameRows,
  batch: number,
  ids: readonly string[],
  merged: MergedCells = new Map(),
): ReadonlyMap<string, FrameColumn> {
  if (ids.length === 0) return new Map();
  const readers = ids.map((id) => columnReader(fieldOf(rows.table, id), rows.length));
  const columns = ids.map((id) => columnOf(rows.table, id)).join(", ");
  let row = 0;
  // the row's entity stands first
  const take = (cells: readonly Cell[]) => {
    for (let i = 0; i < readers.length; i++) readers[i]?.take(cells[i + 1] ?? null, row);
    row += 1;
  };
  const takeMerged = merged.size === 0 ? () => {} : mergedTaker(rows, ids, merged, { row: () => row, take });
  // the frame's rows are known: what stands above each needn't be asked again
  const statement = db.prepare(`SELECT i.entity, ${columns} ${fromByEntity(rows.table)} ORDER BY i.entity`).raw();
  for (const cells of statement.iterate({ batch }) as Iterable<readonly Cell[]>) {
    takeMerged();
    // a row that isn't the frame's waits for its parents, or stands in a merged one
    if (rows.entity[row] === cells[0]) take(cells);
  }
  takeMerged();
  return new Map(
    ids.map((id, i) => [id, readers[i]?.column()] as const).filter((entry): entry is [string, FrameColumn] => entry[1] !== undefined),
  );
}

type Taking = { readonly row: () => number; readonly take: (cells: readonly Cell[]) => void };

/** Takes the merged rows that come next in the frame. */
function mergedTaker({ table, entity }: FrameRows, ids: readonly string[], merged: MergedCells, { row, take }: Taking): () => void {
  const places = ids.map((id) => fieldsOf(table).findIndex(([field]) => field === id));
  return () => {
    for (let own = merged.get(entity[row()] ?? -1); own; own = merged.get(entity[row()] ?? -1)) {
      const cells = own;
      take([null, ...places.map((place) => cells[place] ?? null)]);
    }
  };
}
