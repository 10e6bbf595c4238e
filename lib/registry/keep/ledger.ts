import { desc, max } from "drizzle-orm";
import { drizzle } from "drizzle-orm/better-sqlite3";
import type { Connection } from "@/db/open";
import * as schema from "@/db/schema";
import { type FindingCode, findingSeverities } from "@/lib/codebook";
import { countsOf } from "../counts";
import type { Batch, FindingCounts, State } from "../types";

type BatchRow = typeof schema.batch.$inferSelect;

function batchOf({ batch, kind, at, contentHash, undoes, ...counts }: BatchRow): Batch {
  return { batch, kind, at, counts, contentHash, undoes };
}

/** Every batch, oldest first. */
export function batchesIn(db: Connection): readonly Batch[] {
  return drizzle(db).select().from(schema.batch).orderBy(schema.batch.batch).all().map(batchOf);
}

/** The newest batch; undefined in an empty registry. */
export function newestBatch(db: Connection): Batch | undefined {
  const row = drizzle(db).select().from(schema.batch).orderBy(desc(schema.batch.batch)).limit(1).get();
  return row && batchOf(row);
}

export function stateOf(db: Connection): State {
  const ledger = drizzle(db);
  const batch =
    ledger
      .select({ batch: max(schema.batch.batch) })
      .from(schema.batch)
      .get()?.batch ?? 0;
  return { batch, erasures: ledger.select().from(schema.erasure).get()?.count ?? 0 };
}

/** Writes a batch into the ledger. Its number must be the next. */
export function enterBatch(db: Connection, { counts, ...batch }: Batch): void {
  drizzle(db)
    .insert(schema.batch)
    .values({ ...batch, ...counts })
    .run();
}

/** Keeps how often each finding stood when a batch was committed. @throws RangeError for a code that is no finding's */
export function enterFindings(db: Connection, batch: number, findings: FindingCounts): void {
  for (const [code, count] of Object.entries(findings)) {
    if (!Object.hasOwn(findingSeverities, code)) throw new RangeError("enterFindings requires codes of findings, received another word");
    if (count > 0) drizzle(db).insert(schema.batchFinding).values({ batch, code, count }).run();
  }
}

/** How often each finding stood when a batch was committed. */
export function findingsOf(db: Connection, batch: number): FindingCounts {
  const rows = drizzle(db).select().from(schema.batchFinding).all();
  const own = rows.filter((row) => row.batch === batch).map(({ code, count }) => [code as FindingCode, count] as const);
  return Object.fromEntries(own);
}

export const noRows = countsOf(() => 0);
