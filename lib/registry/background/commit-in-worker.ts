import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { Worker } from "node:worker_threads";
import { NothingCommitted, StopTooLate } from "../errors";
import type { OnPace } from "../pace";
import type { Turns } from "../turns";
import type { CommitResult } from "../types";
import { errorOf } from "./failure";
import type { Answer, FromWorker, Task, ToWorker } from "./talk";

const name = "start-worker.mjs";
const stopped = "the commit was stopped; nothing was committed";

/** Beside this file, or below the project's root when a bundler has moved this file elsewhere. */
function workerFile(): string {
  const beside = join(/* turbopackIgnore: true */ dirname(fileURLToPath(import.meta.url)), name);
  return existsSync(/* turbopackIgnore: true */ beside)
    ? beside
    : join(/* turbopackIgnore: true */ process.cwd(), "lib", "registry", "background", name);
}

type Thread = { readonly worker: Worker; readonly ask: (message: ToWorker) => Promise<Answer> };

/** A thread for a task. Each message is answered; one that ends without an answer, now or long ago, was stopped. */
function threadFor(task: Task, onPace: OnPace): Thread {
  const worker = new Worker(/* turbopackIgnore: true */ workerFile(), { workerData: task, execArgv: [] });
  const ended = new Promise<never>((_, reject) => {
    worker.once("error", reject);
    worker.once("exit", () => reject(new NothingCommitted(stopped)));
  });
  // a thread that ends when nobody waits for it is no error
  ended.catch(() => undefined);
  let answered: (answer: Answer) => void = () => undefined;
  worker.on("message", (said: FromWorker) => ("pace" in said ? onPace(said.pace) : answered(said)));
  const ask = async (message: ToWorker) => {
    const answer = new Promise<Answer>((resolve) => {
      answered = resolve;
    });
    worker.postMessage(message);
    const said = await Promise.race([answer, ended]);
    if ("failed" in said) throw errorOf(said.failed);
    return said;
  };
  return { worker, ask };
}

export type WorkerOptions = {
  readonly signal?: AbortSignal | undefined;
  /** Waits for the turn among this process's writers. */
  readonly turn: Turns;
  /** The newest batch. */
  readonly newest: () => number;
  readonly onPace?: OnPace | undefined;
};

/** The commit itself, in its turn. A stop that came after the thread had committed is told as such. */
async function end({ ask }: Thread, newest: () => number): Promise<CommitResult> {
  const before = newest();
  try {
    const said = await ask({ end: true });
    if ("done" in said) return said.done;
  } catch (error) {
    if (error instanceof NothingCommitted && newest() > before) throw new StopTooLate(newest());
    throw error;
  }
  throw new TypeError("commitInWorker requires a result at the end, received another word");
}

/**
 * Commits the text of a commit in a thread of its own, so that the caller's goes on answering. Told to stop, the thread is ended wherever
 * it is, and its transaction with it.
 * @throws what a commit throws; NothingCommitted when it is told to stop
 */
export async function commitInWorker(
  task: Task,
  pieces: AsyncIterable<string>,
  { signal, turn, newest, onPace = () => undefined }: WorkerOptions,
): Promise<CommitResult> {
  const thread = threadFor(task, onPace);
  const stop = () => void thread.worker.terminate();
  signal?.addEventListener("abort", stop, { once: true });
  try {
    if (signal?.aborted) throw new NothingCommitted(stopped);
    for await (const text of pieces) await thread.ask({ text });
    return await turn(() => end(thread, newest));
  } finally {
    signal?.removeEventListener("abort", stop);
    await thread.worker.terminate();
  }
}
