import { type TableName, tableNames } from "@/lib/codebook";
import type { StrippedRows } from "../types";
import type { AnyRow } from "./blank-row";
import type { HeldIndex } from "./held-index";
import { changeOf } from "./meet-held";
import type { Prepared, TableCounts } from "./prepared";
import { rowKey } from "./row-key";

type News = Pick<Prepared["counts"], "fresh" | "changed" | "unchanged" | "absent">;
export const notCompared: News = { fresh: null, changed: null, unchanged: null, absent: null };

/** Rows that are new, change what is held, or say it again; and rows held that these files don't name, which stay held. */
export function countNews(rows: StrippedRows, held: HeldIndex | null): News {
  if (!held) return notCompared;
  const fresh = zeros();
  const changed = zeros();
  const unchanged = zeros();
  const absent = zeros();
  for (const table of tableNames) {
    for (const row of rows[table]) {
      const change = changeOf(row as AnyRow, held.rows[table].get(rowKey(table, row)));
      if (change === "new") fresh[table]++;
      else if (change === "as-held") unchanged[table]++;
      else changed[table]++;
    }
    absent[table] = held.rows[table].size - changed[table] - unchanged[table];
  }
  return { fresh, changed, unchanged, absent } satisfies Record<string, TableCounts>;
}

function zeros(): Record<TableName, number> {
  return Object.fromEntries(tableNames.map((table) => [table, 0])) as Record<TableName, number>;
}
