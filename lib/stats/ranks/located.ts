import { kthValue } from "./kth-value";

/** A long list of values that is never written out: how many there are, their ends, and how many are at most t. */
export interface Counted {
  readonly count: number;
  readonly least: number;
  readonly most: number;
  readonly atMost: (t: number) => number;
}

/** The k-th smallest of them, from 1. */
export function kthOf(list: Counted, k: number): number {
  return kthValue(k, list.least, list.most, list.atMost);
}

/** Their median: the mean of the two middle ones when their number is even. */
export function medianOf(list: Counted): number {
  const half = Math.floor((list.count + 1) / 2);
  const low = kthOf(list, half);
  return list.count % 2 === 1 ? low : low / 2 + kthOf(list, half + 1) / 2;
}
