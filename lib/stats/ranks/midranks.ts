/** Ranks from 1, equal values sharing the mean of theirs; `tieSum` is Σ(t³ − t) over the runs of t equal values. */
export interface Ranked {
  readonly ranks: Float64Array;
  readonly tieSum: number;
}

/** @example midranks([10, 30, 30]).ranks // => new Float64Array([1, 2.5, 2.5]) */
export function midranks(values: readonly number[]): Ranked {
  const sorted = Float64Array.from(values).sort();
  const distinct: number[] = [];
  const shared: number[] = [];
  let tieSum = 0;
  for (let start = 0; start < sorted.length; ) {
    let end = start + 1;
    while (sorted[end] === sorted[start]) end++;
    distinct.push(sorted[start] as number);
    shared.push((start + 1 + end) / 2);
    tieSum += (end - start) ** 3 - (end - start);
    start = end;
  }
  return { ranks: Float64Array.from(values, (value) => shared[placeOf(distinct, value)] as number), tieSum };
}

/** Where a value stands among rising distinct ones that hold it. */
function placeOf(distinct: readonly number[], value: number): number {
  let [low, high] = [0, distinct.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((distinct[middle] as number) < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
