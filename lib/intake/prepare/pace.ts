import { turn } from "../pace";

const rowsAtATime = 1000;

/** Does a piece of work a row, letting others have their turn between chunks, and stopping when it is told to. */
export async function eachRow<T>(
  items: readonly T[],
  work: (item: T, index: number) => void,
  { signal, onChunk }: { signal?: AbortSignal | null | undefined; onChunk?: ((done: number) => void) | undefined } = {},
): Promise<void> {
  for (let from = 0; from < items.length; from += rowsAtATime) {
    signal?.throwIfAborted();
    const to = Math.min(items.length, from + rowsAtATime);
    for (let i = from; i < to; i++) work(items[i] as T, i);
    onChunk?.(to);
    if (to < items.length) await turn();
  }
}
