import { versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import { type CorrectionReason, type Field, fieldOf, snake, type TableName, tables, type Value } from "@/lib/codebook";
import type { Cell } from "../commit/cells";
import { type Join, joinsAsOf, rootOf } from "../join/groups";
import { keyOfRow } from "../read/row-sql";
import { valueOfCell } from "../read/rows";

/** A field that was corrected by hand: the row by its natural key, what the unit's sheet said of it, and what holds. Days on the patient's line. */
export type Correction = {
  readonly id: number;
  readonly table: TableName;
  readonly entity: number;
  readonly key: Readonly<Record<string, Value>>;
  readonly field: string;
  readonly sheet: Value;
  readonly value: Value;
  readonly reason: CorrectionReason;
  readonly since: number;
};

type Row = { id: number; of_table: TableName; entity: number; field: string; sheet: Cell; reason: CorrectionReason; since: number };

/** A cell on the line of the patient's first number, as a value. */
function onLine(field: Field, cell: Cell, days: number): Value {
  return field.kind === "day" && typeof cell === "number" ? cell + days : valueOfCell(field, cell);
}

type Keyed = { readonly key: Readonly<Record<string, Value>>; readonly days: number };

/** A row's natural key as the patient's, and the days between its own line and the patient's. */
function keyedRow(db: Connection, joins: readonly Join[], table: TableName, entity: number): Keyed {
  const [person, ...cells] = db.prepare(keyOfRow(table)).raw().get(entity) as Cell[];
  const root = rootOf(joins, Number(person));
  const name = db.prepare("SELECT person FROM person_id WHERE entity = ?").pluck().get(root.entity) as string;
  const entries = tables[table].key.map((id, i) => [id, id === "person" ? name : onLine(fieldOf(table, id), cells[i] ?? null, root.days)]);
  return { key: Object.fromEntries(entries), days: root.days };
}

/** Corrections that stood as of a batch, in the order in which their fields were first corrected. */
export function correctionsAsOf(db: Connection, batch: number): readonly Correction[] {
  const rows = db
    .prepare(
      `SELECT i.entity AS id, i.of_table, i.of_entity AS entity, i.field, v.sheet, v.reason, v.since_batch AS since
       FROM correction v JOIN correction_id i ON i.entity = v.entity
       WHERE v.since_batch <= @batch AND @batch < v.until_batch ORDER BY i.entity`,
    )
    .all({ batch }) as Row[];
  const joins = rows.length === 0 ? [] : joinsAsOf(db, batch);
  return rows.map(({ of_table: table, entity, field: id, sheet, ...row }) => {
    const field = fieldOf(table, id);
    const { key, days } = keyedRow(db, joins, table, entity);
    const held = db
      .prepare(`SELECT ${snake(id)} FROM ${versionTable(table)} WHERE entity = ? AND since_batch <= ? AND ? < until_batch`)
      .pluck()
      .get(entity, batch, batch) as Cell | undefined;
    return { ...row, table, entity, key, field: id, sheet: onLine(field, sheet, days), value: onLine(field, held ?? null, days) };
  });
}
