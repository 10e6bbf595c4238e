import type { Batch } from "../types";

/**
 * Batches after `batch` that still stand. A batch and the undo that put it back leave things as they were, so both are left out, unless
 * the undo was undone in turn.
 * @example standingAfter(1, [{ batch: 1, undoes: null }, { batch: 2, undoes: null }, { batch: 3, undoes: 2 }, { batch: 4, undoes: null }]) // => [4]
 */
export function standingAfter(batch: number, batches: readonly Pick<Batch, "batch" | "undoes">[]): readonly number[] {
  const later = batches.filter((one) => one.batch > batch);
  const cancelled = new Set<number>();
  // newest first: whether an undo stands is known before what it undid
  for (const { batch: undo, undoes } of later.toReversed()) {
    if (undoes === null || undoes <= batch || cancelled.has(undo)) continue;
    cancelled.add(undo).add(undoes);
  }
  return later.map((one) => one.batch).filter((one) => !cancelled.has(one));
}
