import type { Connection } from "@/db/open";
import { type TableName, tableNames } from "@/lib/codebook";
import { countsOf } from "../counts";
import { requireAt } from "../keep/at";
import { batchesIn, enterBatch } from "../keep/ledger";
import { hashAsOf } from "../read/content-hash";
import type { Batch, UndoResult } from "../types";
import { laterBatches, putBack, type Versioned, versionedBeside } from "./put-back";
import { standingAfter } from "./standing";

const versioned: readonly Versioned[] = [...tableNames, ...versionedBeside];

/** Thrown to leave the transaction without a trace. */
export class UndoBlocked extends Error {
  readonly blockedBy: readonly number[];

  constructor(batches: Iterable<number>) {
    super("a later batch touched the same rows");
    this.blockedBy = [...new Set(batches)].sort((a, b) => a - b);
  }
}

function requireUndoable(batches: readonly Batch[], batch: number): void {
  const found = batches.find((one) => one.batch === batch);
  if (!found) throw new RangeError(`undo requires a batch of 1 to ${batches.length}, received ${batch}`);
  if (found.kind === "erasure") throw new RangeError("undo requires a batch that isn't an erasure, received one: what was erased is gone");
}

function requireUnblocked(db: Connection, batches: readonly Batch[], batch: number): void {
  const standing = new Set(standingAfter(batch, batches));
  const touching = versioned.flatMap((table) => laterBatches(db, table, batch));
  const blocking = touching.filter((later) => standing.has(later));
  if (blocking.length > 0) throw new UndoBlocked(blocking);
}

/**
 * Undoes a batch by a new one, within the caller's transaction. Undoing an undo is redo.
 * @throws UndoBlocked when a later batch that still stands touched what this one did
 * @throws RangeError when there is no such batch, or nothing is left of it
 */
export function undoBatch(db: Connection, batch: number, at: string): Exclude<UndoResult, { blockedBy: readonly number[] }> {
  requireAt(at);
  const batches = batchesIn(db);
  requireUndoable(batches, batch);
  const now = batches.length + 1;
  requireUnblocked(db, batches, batch);
  const putBackCounts = new Map(versioned.map((table) => [table, putBack(db, table, { batch, now })]));
  if ([...putBackCounts.values()].every((n) => n === 0)) {
    throw new RangeError(`undo requires a batch of which rows are left, received batch ${batch}: its rows were erased`);
  }
  const contentHash = hashAsOf(db, now);
  const counts = countsOf((table: TableName) => putBackCounts.get(table) ?? 0);
  enterBatch(db, { batch: now, kind: "undo", at, counts, contentHash, undoes: batch });
  return { batch: now, undoes: batch, contentHash };
}
