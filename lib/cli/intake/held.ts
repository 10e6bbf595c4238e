import { type TableName, tableNames } from "@/lib/codebook";
import type { StrippedRows } from "@/lib/intake";
import type { Registry } from "@/lib/registry";

/** What the registry holds, by table, so that intake can tell new from known. */
export async function heldRows(registry: Registry): Promise<StrippedRows> {
  const rows = Object.fromEntries(tableNames.map((table) => [table, [] as unknown[]])) as Record<TableName, unknown[]>;
  for await (const { table, row } of registry.held()) rows[table].push(row);
  return rows as StrippedRows;
}
