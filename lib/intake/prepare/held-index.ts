import { byTable, fieldsOf, type TableName, tables, type Value } from "@/lib/codebook";
import type { StrippedRows } from "../types";
import type { AnyRow } from "./blank-row";
import type { HeldCorrection, Joined } from "./options";
import { rowKey } from "./row-key";

/** What the registry holds, found by a brought row: by natural key, on the line of the patient's first number. */
export type HeldIndex = {
  readonly rows: StrippedRows;
  readonly find: (table: TableName, row: AnyRow) => AnyRow | undefined;
  /** A brought row as the registry reads it: of a number joined to another, that other's pseudonym and days. */
  readonly asHeld: (table: TableName, row: AnyRow) => AnyRow;
  /** Days of surgery held of a person's bone of one side, on that person's own line. */
  readonly surgeriesOf: (limb: AnyRow) => readonly number[];
  /** Fields of a row that were corrected by hand. */
  readonly correctionsOf: (table: TableName, row: AnyRow) => ReadonlyMap<string, HeldCorrection> | undefined;
};
type Beside = { readonly joins?: readonly Joined[] | undefined; readonly corrections?: readonly HeldCorrection[] | undefined };

export function heldIndex(held: StrippedRows, { joins = [], corrections = [] }: Beside = {}): HeldIndex {
  const byKey = byTable((table) => new Map((held[table] as readonly AnyRow[]).map((row) => [rowKey(table, row), row])));
  const joined = new Map(joins.map((join) => [join.person, join]));
  const asHeld = (table: TableName, row: AnyRow): AnyRow => {
    const join = joined.get(String(row.person));
    return join ? onLine(table, row, join) : row;
  };
  const surgeries = surgeriesByLimb(held);
  const corrected = correctionsByRow(corrections);
  return {
    rows: held,
    asHeld,
    find: (table, row) => byKey[table].get(rowKey(table, asHeld(table, row))),
    surgeriesOf: (limb) => {
      const join = joined.get(String(limb.person));
      const known = surgeries.get(limbKey(join ? { ...limb, person: join.as } : limb)) ?? [];
      return join ? known.map((day) => day - join.days) : known;
    },
    correctionsOf: (table, row) => (corrected.size === 0 ? undefined : corrected.get(`${table}|${rowKey(table, asHeld(table, row))}`)),
  };
}

const dayFields = byTable((table) => fieldsOf(table).flatMap(([id, { kind }]) => (kind === "day" ? [id] : [])));

function onLine(table: TableName, row: AnyRow, { as, days }: Joined): AnyRow {
  const moved: AnyRow = { ...row, person: as };
  for (const field of dayFields[table]) if (typeof moved[field] === "number") moved[field] = (moved[field] as number) + days;
  return moved;
}

function surgeriesByLimb({ segment }: StrippedRows): ReadonlyMap<string, readonly number[]> {
  const surgeries = new Map<string, number[]>();
  for (const row of segment) {
    const known = surgeries.get(limbKey(row));
    if (known) known.push(row.surgeryDay);
    else surgeries.set(limbKey(row), [row.surgeryDay]);
  }
  return surgeries;
}

function correctionsByRow(corrections: readonly HeldCorrection[]): ReadonlyMap<string, ReadonlyMap<string, HeldCorrection>> {
  const byRow = new Map<string, Map<string, HeldCorrection>>();
  for (const correction of corrections) {
    const { table, key, field } = correction;
    const name = `${table}|${tables[table].key.map((id) => String((key[id] as Value) ?? "")).join("|")}`;
    const fields = byRow.get(name) ?? new Map<string, HeldCorrection>();
    byRow.set(name, fields.set(field, correction));
  }
  return byRow;
}

/** A person's bone of one side. */
export function limbKey({ person, bone, side }: { person?: unknown; bone?: unknown; side?: unknown }): string {
  return `${person}|${bone}|${side}`;
}
