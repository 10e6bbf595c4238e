import { fieldOf, snake, type TableName } from "@/lib/codebook";
import { checkOf, typeOf } from "./checks";

/**
 * A field as a column with its named CHECK.
 * @throws RangeError when the table has no such field
 */
export function columnDdl(sqlTable: string, table: TableName, id: string): string {
  const field = fieldOf(table, id);
  const { name, rule } = checkOf(sqlTable, id, field);
  return `${snake(id)} ${typeOf(field)}${field.required ? " NOT NULL" : ""} CONSTRAINT ${name} CHECK (${rule})`;
}
