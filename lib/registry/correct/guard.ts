import type { Connection } from "@/db/open";
import { type Field, fieldsOf, type TableName, tables, type Value } from "@/lib/codebook";
import type { Cell, Cells, Layout } from "../commit/cells";
import { joinsAsOf, rootOf } from "../join/groups";
import { valueOfCell } from "../read/rows";
import { type Correction, correctionsAsOf } from "./standing";

/** Keeps corrections standing while a sheet is written. */
export type CorrectionGuard = {
  /** The cells of a brought row as they may be written. */
  readonly settle: (layout: Layout, cells: Cells) => Cells;
  /** Cells that say something else than sheet and correction said: not written, unless a person was asked. */
  readonly heldBack: () => number;
  readonly taken: () => number;
};

/** What a person's number is read as: the first of its patient, and the days between their lines. */
type Line = { readonly person: string; readonly days: number };

function linesOf(db: Connection, batch: number): (person: string) => Line {
  const joins = joinsAsOf(db, batch);
  const nameOf = db.prepare("SELECT person FROM person_id WHERE entity = ?").pluck();
  const lines = new Map(
    joins.map(({ person }) => {
      const { entity, days } = rootOf(joins, person.entity);
      return [person.person, { person: String(nameOf.get(entity)), days }] as const;
    }),
  );
  return (person) => lines.get(person) ?? { person, days: 0 };
}

const nameOf = (table: TableName, key: readonly Value[]) => `${table}|${key.map((value) => value ?? "").join("|")}`;

function onLine(field: Field, cell: Cell, days: number): Value {
  return field.kind === "day" && typeof cell === "number" ? cell + days : valueOfCell(field, cell);
}

/**
 * A correction holds until the sheet's own value changes: a sheet that says again what it said, or what the correction says, changes
 * nothing. Anything else is held back, or, where a person was asked and chose the sheet, taken: then the correction ends with `batch`.
 * `null` when nothing was corrected.
 */
export function correctionGuard(db: Connection, batch: number, { take }: { readonly take: boolean }): CorrectionGuard | null {
  const standing = correctionsAsOf(db, batch - 1);
  if (standing.length === 0) return null;
  const lineOf = linesOf(db, batch - 1);
  const byRow = new Map<string, Correction[]>();
  for (const one of standing) {
    const name = nameOf(
      one.table,
      tables[one.table].key.map((id) => one.key[id] ?? null),
    );
    byRow.set(name, [...(byRow.get(name) ?? []), one]);
  }
  const end = db.prepare("UPDATE correction SET until_batch = ? WHERE entity = ? AND until_batch > ?");
  let [heldBack, taken] = [0, 0];

  function cellAfter(correction: Correction, field: Field, cell: Cell, days: number): Cell {
    const said = onLine(field, cell, days);
    if (said !== correction.sheet && said !== correction.value) {
      if (take) {
        end.run(batch, correction.id, batch);
        taken += 1;
        return cell;
      }
      heldBack += 1;
    }
    // a blank says nothing; where none may stand, what holds is said again
    return field.required ? cellOn(field, correction.value, days) : null;
  }

  return {
    heldBack: () => heldBack,
    taken: () => taken,
    settle: ({ table, fields, key }, cells) => {
      const { person, days } = lineOf(String(cells[0]));
      const values = key.map((place) => {
        const [id, field] = fields[place] ?? [];
        return id === "person" || !field ? person : onLine(field, cells[place] ?? null, days);
      });
      const corrections = byRow.get(nameOf(table, values));
      if (!corrections) return cells;
      const settled = [...cells];
      for (const correction of corrections) {
        const place = fieldsOf(table).findIndex(([id]) => id === correction.field);
        const [field, cell] = [fields[place]?.[1], cells[place] ?? null];
        if (field && cell !== null) settled[place] = cellAfter(correction, field, cell, days);
      }
      return settled;
    },
  };
}

function cellOn(field: Field, value: Value, days: number): Cell {
  if (typeof value === "boolean") return value ? 1 : 0;
  return field.kind === "day" && typeof value === "number" ? value - days : value;
}
