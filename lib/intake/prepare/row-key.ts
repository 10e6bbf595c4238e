import { type TableName, tables } from "@/lib/codebook";
import type { AnyRow } from "./blank-row";

/** The natural key of a row as text. A blank onset is one value of the key. */
export function rowKey(table: TableName, row: AnyRow): string {
  return tables[table].key.map((field) => String(row[field] ?? "")).join("|");
}
