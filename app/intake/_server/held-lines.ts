import type { HeldRow } from "@/lib/registry";

const linesAChunk = 500;
const encoder = new TextEncoder();

/** Rows as NDJSON, blanks left out, closed by a line that counts them; made as they are read, never all at once. */
export function heldLines(rows: AsyncIterable<HeldRow>): ReadableStream<Uint8Array> {
  const iterator = rows[Symbol.asyncIterator]();
  let sent = 0;
  return new ReadableStream({
    async pull(controller) {
      let chunk = "";
      for (let n = 0; n < linesAChunk; n++) {
        const next = await iterator.next();
        if (next.done) {
          controller.enqueue(encoder.encode(`${chunk}${JSON.stringify({ end: sent })}\n`));
          controller.close();
          return;
        }
        chunk += lineOf(next.value);
        sent++;
      }
      controller.enqueue(encoder.encode(chunk));
    },
    async cancel() {
      await iterator.return?.();
    },
  });
}

function lineOf({ table, row }: HeldRow): string {
  const recorded = Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null));
  return `${JSON.stringify({ table, row: recorded })}\n`;
}
