import type { Note } from "../notes";
import { thresholds } from "../thresholds";

/** How often sizes of the statistic over arrangements reach the one seen. */
export interface Tally {
  readonly seen: number;
  reached: number;
  total: number;
  /** The greatest size so far, and how often it came. */
  greatest: number;
  times: number;
}

/** Sizes within 1e-9 of one another are one size: the same arrangement summed in another order. */
const SAME = 1e-9;

export function newTally(seen: number): Tally {
  return { seen, reached: 0, total: 0, greatest: -1, times: 0 };
}

export function count(tally: Tally, size: number): void {
  tally.total += 1;
  if (size >= tally.seen * (1 - SAME)) tally.reached += 1;
  if (size > tally.greatest * (1 + SAME)) {
    tally.greatest = size;
    tally.times = 1;
  } else if (size >= tally.greatest * (1 - SAME)) tally.times += 1;
}

/**
 * p of a permutation test and the smallest it could have been. All arrangements: their share; drawn ones: (b + 1)/(B + 1),
 * the arrangement seen counted among them. Phipson B, Smyth GK. Stat Appl Genet Mol Biol 2010;9:39.
 * When even the smallest is above 0.05 there is no p: the interval is to be read.
 */
export function permutationP({ reached, total, times }: Tally, exhaustive: boolean) {
  const smallestP = exhaustive ? times / total : 1 / (total + 1);
  const p = exhaustive ? reached / total : (reached + 1) / (total + 1);
  const notes: Note[] = smallestP > 0.05 ? [{ code: "smallest-p-above-0.05", smallest: smallestP }] : [];
  return { p: smallestP > 0.05 ? null : p, smallestP, arrangements: total, exhaustive, notes };
}

/** Takes all arrangements when there are few, else draws the usual number. */
export function takesAll(arrangements: number): boolean {
  return arrangements <= thresholds.arrangementsTaken;
}
