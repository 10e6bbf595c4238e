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

/** A message to oneself: timers of a page wait at least 4 ms each, which a hundred thousand rows would feel. */
function turn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
