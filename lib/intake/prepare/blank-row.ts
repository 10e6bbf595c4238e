import { fieldsOf, type TableName, tableNames, type Value } from "@/lib/codebook";

export type AnyRow = { [field: string]: Value };

const blanks = Object.fromEntries(
  tableNames.map((table) => [table, Object.freeze(Object.fromEntries(fieldsOf(table).map(([id]) => [id, null])))]),
) as Readonly<Record<TableName, Readonly<Record<string, null>>>>;

/** A row of a table with nothing recorded, its fields in codebook order. */
export function blankRow(table: TableName): AnyRow {
  return { ...blanks[table] };
}
