import type { Commit } from "@/lib/intake";
import type { CommitOptions } from "../commit/commit";
import { NothingCommitted } from "../errors";
import type { CommitResult } from "../types";
import { commitInWorker, type WorkerOptions } from "./commit-in-worker";
import { lineTaker } from "./line-taker";
import type { Task } from "./talk";

/** Characters of a commit that is done at once: a few thousand rows, a fraction of a second. A thread's start takes longer. */
const small = 4_000_000;

export type LinesOptions = Pick<CommitOptions, "at" | "onPace"> & {
  /** Stops the commit wherever it is: nothing is then written. */
  readonly signal?: AbortSignal;
  /** Characters above which a commit has a thread of its own. */
  readonly largeFrom?: number;
};

async function* text(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  for await (const piece of bytes) yield decoder.decode(piece, { stream: true });
  yield decoder.decode();
}

async function* joined(first: readonly string[], rest: AsyncIterator<string>): AsyncGenerator<string> {
  try {
    yield* first;
    for (let next = await rest.next(); !next.done; next = await rest.next()) yield next.value;
  } finally {
    // a reader that turns away ends the source too
    await rest.return?.();
  }
}

type Ways = WorkerOptions & {
  readonly task: Task;
  readonly largeFrom?: number | undefined;
  /** Commits here, in this thread. */
  readonly here: (commit: Commit) => CommitResult;
};

/**
 * Commits what comes as lines: a small commit here, at once, a large one in a thread of its own.
 * @throws what a commit throws; WireError for a line that may not come in; TypeError for bytes that are no UTF-8
 */
export async function commitLines(
  bytes: AsyncIterable<Uint8Array>,
  { task, largeFrom = small, here, ...ways }: Ways,
): Promise<CommitResult> {
  const pieces = text(bytes)[Symbol.asyncIterator]();
  const first: string[] = [];
  let length = 0;
  for (let next = await pieces.next(); !next.done; next = await pieces.next()) {
    first.push(next.value);
    length += next.value.length;
    if (length > largeFrom) return commitInWorker(task, joined(first, pieces), ways);
  }
  const taker = lineTaker();
  for (const piece of first) taker.take(piece);
  const commit = taker.finish();
  return ways.turn(() => {
    if (ways.signal?.aborted) throw new NothingCommitted("the commit was stopped; nothing was committed");
    return here(commit);
  });
}
