import { type TableName, tables } from "@/lib/codebook";
import type { AnyRow } from "./blank-row";

/** The natural key of a row as text. A blank onset is one value of the key. */
export function rowKey(table: TableName, row: AnyRow): string {
  const { key } = tables[table];
  let text = String(row[key[0]] ?? "");
  for (let i = 1; i < key.length; i++) text += `|${row[key[i] as string] ?? ""}`;
  return text;
}
