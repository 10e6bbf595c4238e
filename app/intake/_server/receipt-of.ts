import { type TableName, tableNames } from "@/lib/codebook";
import { type CommitResult, type Counts, countNames } from "@/lib/registry";
import type { Receipt } from "../_talk/receipt";

export function receiptOf({ batch, contentHash, committed, changed, unchanged }: CommitResult): Receipt {
  return { batch, contentHash, committed: byTable(committed), changed: byTable(changed), unchanged: byTable(unchanged) };
}

function byTable(counts: Counts): Readonly<Record<TableName, number>> {
  return Object.fromEntries(tableNames.map((table) => [table, counts[countNames[table]]])) as Record<TableName, number>;
}
