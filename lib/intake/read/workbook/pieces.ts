const bytesAtATime = 1024 * 1024;

export type Pieces = {
  /** Markup before the first element of that name. */
  readonly head: string;
  /** Whole elements of that name, some at a time. */
  readonly elements: Generator<string>;
  /** Markup after the last one; known when the elements have been taken. */
  readonly tail: () => string;
};

/** A part of a workbook cut between its elements of one name, so that a sheet of a hundred megabytes never stands as one text. */
export function piecesOf(part: Uint8Array, name: "row" | "si"): Pieces {
  const chunks = decoded(part);
  const first = new RegExp(`<(?:\\w+:)?${name}[\\s/>]`);
  let rest = "";
  let start = -1;
  for (let chunk = chunks.next(); ; chunk = chunks.next()) {
    if (chunk.value) rest += chunk.value;
    start = rest.search(first);
    if (start >= 0 || chunk.done) break;
  }
  const head = start < 0 ? rest : rest.slice(0, start);
  rest = start < 0 ? "" : rest.slice(start);
  function* elements(): Generator<string> {
    for (;;) {
      const end = lastEnd(rest, name);
      if (end > 0) yield rest.slice(0, end);
      rest = rest.slice(end);
      const chunk = chunks.next();
      if (chunk.done) return;
      rest += chunk.value;
    }
  }
  return { head, elements: elements(), tail: () => rest };
}

/** Where the last whole element ends; 0 when none does. */
function lastEnd(text: string, name: string): number {
  const close = new RegExp(`^(?:</(?:\\w+:)?${name}\\s*>|<(?:\\w+:)?${name}(?:\\s[^<>]*)?/>)`);
  for (let at = text.lastIndexOf("<"); at >= 0; at = at === 0 ? -1 : text.lastIndexOf("<", at - 1)) {
    const found = close.exec(text.slice(at, at + 400));
    if (found) return at + found[0].length;
  }
  return 0;
}

function* decoded(part: Uint8Array): Generator<string> {
  const decoder = new TextDecoder(encodingOf(part));
  for (let from = 0; from < part.length; from += bytesAtATime) {
    const to = Math.min(part.length, from + bytesAtATime);
    yield decoder.decode(part.subarray(from, to), { stream: to < part.length });
  }
}

/** The text of a small part. */
export function textOf(part: Uint8Array): string {
  return new TextDecoder(encodingOf(part)).decode(part);
}

// parts are UTF-8 or UTF-16 (ISO/IEC 29500-2, 8.1.4)
function encodingOf([a, b]: Uint8Array): "utf-8" | "utf-16le" | "utf-16be" {
  if (a === 0xff && b === 0xfe) return "utf-16le";
  return a === 0xfe && b === 0xff ? "utf-16be" : "utf-8";
}
