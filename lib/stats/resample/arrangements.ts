import type { Random } from "./random";
import { shuffleInPlace } from "./shuffle";

/** Positions that may change places with one another: from `start` (included) to `end` (left out). */
export interface Stratum {
  readonly start: number;
  readonly end: number;
}

/** In how many ways 0s and 1s can be arranged within the strata; Infinity once above `most`. */
export function countArrangements(labels: ArrayLike<number>, strata: readonly Stratum[], most: number): number {
  let count = 1;
  for (const { start, end } of strata) {
    count *= choose(end - start, onesOf(labels, start, end));
    if (count > most) return Infinity;
  }
  return Math.round(count);
}

/** Calls `visit` with every arrangement (the same array each time, left as it was in the end). */
export function everyArrangement(labels: Int8Array, strata: readonly Stratum[], visit: (labels: Int8Array) => void): void {
  const before = labels.slice();
  fillStratum(labels, strata, 0, visit);
  labels.set(before);
}

function fillStratum(labels: Int8Array, strata: readonly Stratum[], which: number, visit: (labels: Int8Array) => void): void {
  const stratum = strata[which];
  if (stratum)
    fillFrom(labels, stratum.start, stratum.end, onesOf(labels, stratum.start, stratum.end), () =>
      fillStratum(labels, strata, which + 1, visit),
    );
  else visit(labels);
}

/** Every way of putting `ones` 1s into the places from `from` to `end`. */
function fillFrom(labels: Int8Array, from: number, end: number, ones: number, next: () => void): void {
  if (ones === 0 || end - from === ones) {
    labels.fill(ones === 0 ? 0 : 1, from, end);
    next();
    return;
  }
  labels[from] = 0;
  fillFrom(labels, from + 1, end, ones, next);
  labels[from] = 1;
  fillFrom(labels, from + 1, end, ones - 1, next);
}

/** Puts each stratum's labels in a random order, in place. */
export function shuffleWithin(labels: Int8Array, strata: readonly Stratum[], random: Random): void {
  for (const { start, end } of strata) shuffleInPlace(labels, random, start, end);
}

function onesOf(labels: ArrayLike<number>, start: number, end: number): number {
  let ones = 0;
  for (let i = start; i < end; i++) ones += labels[i] as number;
  return ones;
}

function choose(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= Math.min(k, n - k); i++) ways = (ways * (n - i + 1)) / i;
  return ways;
}
