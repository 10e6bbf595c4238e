import type { Connection } from "@/db/open";
import { fieldsOf, type Rows, type TableName, tableNames } from "@/lib/codebook";
import type { Cell } from "../commit/cells";
import type { Group, Member } from "../join/groups";
import { joinViewAsOf } from "../join/join-view";
import { columnsOfRow, fromAsOf, segmentColumn } from "./row-sql";
import { rowMaker } from "./rows";
import { type RowVersion, versionsIn } from "./versions";

/** A row of a case as of a batch, with its identity and its segment's. */
export type CaseRow = {
  [T in TableName]: { readonly table: T; readonly entity: number; readonly segmentEntity: number | null; readonly row: Rows[T] };
}[TableName];

function plainRows(db: Connection, table: TableName, batch: number, person: number): readonly (readonly Cell[])[] {
  const where = table === "person" ? "i.entity" : "p.entity";
  return db
    .prepare(`SELECT i.entity, ${segmentColumn[table] ?? "NULL"}, ${columnsOfRow(table)} ${fromAsOf(table)} WHERE ${where} = @person`)
    .raw()
    .all({ batch, person }) as Cell[][];
}

/** Rows of a person as of a batch, tables in codebook order; of a patient with several numbers all of them, merged under the first. */
export function rowsOfCase(db: Connection, person: number, batch: number): readonly CaseRow[] {
  const view = joinViewAsOf(db, batch);
  const group = view?.groupOf(person);
  // a second number has no case of its own
  if (group && group.root.entity !== person) return [];
  return tableNames.flatMap((table) => {
    const make = rowMaker(table);
    const rows =
      view && group
        ? view.rowsOf(table, group).map(({ entity, segment, cells }) => [entity, segment, ...cells])
        : plainRows(db, table, batch, person);
    return rows.map(
      // the row was made by the table's own maker
      ([entity, segment = null, ...cells]) =>
        ({ table, entity: Number(entity), segmentEntity: segment === null ? null : Number(segment), row: make(cells) }) as CaseRow,
    );
  });
}

/** Every version of every row of a person, and of the numbers joined to it as of a batch, their days on its line. */
export function versionsOfCase(db: Connection, person: number, batch: number): readonly RowVersion[] {
  const group = joinViewAsOf(db, batch)?.groupOf(person);
  if (!group) return versionsIn(db, person);
  return group.root.entity === person ? group.members.flatMap((member) => onTheLineOf(group, member, versionsIn(db, member.entity))) : [];
}

function onTheLineOf({ root }: Group, { days }: Member, versions: readonly RowVersion[]): readonly RowVersion[] {
  return versions.map((version) => ({ ...version, row: { ...rebased(version, days), person: root.person } }) as RowVersion);
}

const dayFieldsOf = (table: TableName): ReadonlySet<string> =>
  new Set(fieldsOf(table).flatMap(([id, { kind }]) => (kind === "day" ? [id] : [])));

function rebased({ table, row }: RowVersion, days: number): object {
  const isDay = dayFieldsOf(table);
  return Object.fromEntries(
    Object.entries(row).map(([id, value]) => [id, isDay.has(id) && typeof value === "number" ? value + days : value]),
  );
}
