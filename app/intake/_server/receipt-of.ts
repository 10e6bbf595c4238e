import { type TableName, tableNames } from "@/lib/codebook";
import { type CommitResult, type Counts, countNames } from "@/lib/registry";
import type { Receipt } from "../_talk/receipt";

/** What a commit came to, and the rows that wait after it. */
export function receiptOf({ batch, contentHash, ...counts }: CommitResult, waiting: Counts): Receipt {
  return {
    batch,
    contentHash,
    committed: byTable(counts.committed),
    changed: byTable(counts.changed),
    unchanged: byTable(counts.unchanged),
    waiting: byTable(waiting),
  };
}

function byTable(counts: Counts): Readonly<Record<TableName, number>> {
  return Object.fromEntries(tableNames.map((table) => [table, counts[countNames[table]]])) as Record<TableName, number>;
}
