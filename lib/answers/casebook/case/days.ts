import { type Field, fieldsOf, type TableName, type Value } from "@/lib/codebook";
import type { CasebookKind } from "../columns";

/** A recorded field with what a page needs to word it. A day stands as days from a surgery, a pseudonym never. */
export type Held = {
  readonly field: string;
  readonly label: string;
  readonly kind: CasebookKind;
  readonly unit: string | null;
  readonly value: Value;
};

type Row = Readonly<Record<string, Value>>;

export function kindOf(field: Field): CasebookKind {
  if (field.kind === "day") return "days";
  if (field.kind === "count") return "number";
  return field.kind === "keyed" || field.kind === "listed" ? "text" : field.kind;
}

export function unitOf(field: Field): string | null {
  if (field.kind === "day") return "days";
  return field.kind === "number" ? field.unit : null;
}

/** A value as it may be shown: a day becomes days from `zero`, or nothing where there is no zero to count from. */
export function shown(field: Field, value: Value, zero: number | null): Value {
  if (field.kind !== "day" || typeof value !== "number") return value;
  return zero === null ? null : value - zero;
}

/** Fields that name a row or stand elsewhere, and are not told among its values. */
const untold: ReadonlySet<string> = new Set(["person", "bone", "side", "surgeryDay"]);

/** The recorded fields of a row, days counted from `zero`. */
export function heldOf(table: TableName, row: Row, zero: number | null, codeOfSurgeon: (name: string) => string | null): readonly Held[] {
  return fieldsOf(table).flatMap(([id, field]) => {
    const value = row[id] ?? null;
    if (value === null || untold.has(id)) return [];
    const told = field.kind === "keyed" ? codeOfSurgeon(String(value)) : shown(field, value, zero);
    return told === null ? [] : [{ field: id, label: field.label, kind: kindOf(field), unit: unitOf(field), value: told }];
  });
}
