import type { Spans } from "./require-spans";

/**
 * Where an interval-censored curve can fall: stretches that begin where some row begins and end where one ends, with no other end between.
 * Elsewhere it is flat, and within a stretch nothing tells where it falls (Turnbull 1976, J R Stat Soc B 38:290-295).
 * A row covers the candidates `first[row]` to `last[row]`.
 */
export interface CandidateSpans {
  readonly from: Float64Array;
  /** Infinity: not before the last film of anybody. Equal to `from`: an exact time. */
  readonly to: Float64Array;
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** At one time the order is: an exact row begins (it includes the time), rows end, other rows begin (they exclude it). */
const exactBegins = 0;
const ends = 1;
const begins = 2;

interface Edge {
  readonly time: number;
  readonly kind: 0 | 1 | 2;
  readonly row: number;
}

export function candidateSpans({ after, by }: Spans): CandidateSpans {
  const edges = edgesOf(after, by);
  const from: number[] = [];
  const to: number[] = [];
  const first = new Int32Array(after.length);
  const last = new Int32Array(after.length);
  let open: number | null = null;
  for (const { time, kind, row } of edges) {
    if (kind === ends) {
      if (open !== null) {
        from.push(open);
        to.push(time);
        open = null;
      }
      last[row] = from.length - 1;
    } else {
      open = time;
      first[row] = from.length;
    }
  }
  return { from: Float64Array.from(from), to: Float64Array.from(to), first, last };
}

function edgesOf(after: Float64Array, by: Float64Array): readonly Edge[] {
  const edges: Edge[] = [];
  for (let row = 0; row < after.length; row++) {
    const [start, end] = [after[row] as number, by[row] as number];
    edges.push({ time: start, kind: start === end ? exactBegins : begins, row }, { time: end, kind: ends, row });
  }
  // Infinity less Infinity is no number, so times are compared and not subtracted.
  return edges.sort((a, b) => (a.time === b.time ? a.kind - b.kind : a.time < b.time ? -1 : 1));
}
