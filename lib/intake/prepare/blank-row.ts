import { fieldsOf, type TableName, tableNames, type Value } from "@/lib/codebook";

export type AnyRow = { [field: string]: Value };

// not frozen, and made by the parser: a copy of such an object is one block of memory, where a frozen one is copied field by field
const blanks = Object.fromEntries(
  tableNames.map((table) => [table, JSON.parse(JSON.stringify(Object.fromEntries(fieldsOf(table).map(([id]) => [id, null]))))]),
) as Readonly<Record<TableName, Readonly<AnyRow>>>;

/** A row of a table with nothing recorded, its fields in codebook order. */
export function blankRow(table: TableName): AnyRow {
  return { ...blanks[table] };
}
