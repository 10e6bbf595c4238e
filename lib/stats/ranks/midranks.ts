/** Ranks from 1, equal values sharing the mean of theirs; `tieSum` is Σ(t³ − t) over the runs of t equal values. */
export interface Ranked {
  readonly ranks: Float64Array;
  readonly tieSum: number;
}

/** @example midranks([10, 30, 30]).ranks // => new Float64Array([1, 2.5, 2.5]) */
export function midranks(values: readonly number[]): Ranked {
  const order = Uint32Array.from(values, (_, i) => i).sort((i, j) => (values[i] as number) - (values[j] as number));
  const ranks = new Float64Array(values.length);
  let tieSum = 0;
  for (let start = 0; start < order.length; ) {
    const value = values[order[start] as number];
    let end = start + 1;
    while (end < order.length && values[order[end] as number] === value) end++;
    for (let i = start; i < end; i++) ranks[order[i] as number] = (start + 1 + end) / 2;
    const run = end - start;
    tieSum += run ** 3 - run;
    start = end;
  }
  return { ranks, tieSum };
}
