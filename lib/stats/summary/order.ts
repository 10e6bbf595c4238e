import { quantileSorted as typeSeven } from "simple-statistics";

/** The values in rising order, the input untouched. */
export function sortedCopy(values: ArrayLike<number>): number[] {
  const sorted = Float64Array.from(values).sort();
  const copy: number[] = [];
  // by itself Array.from takes twice as long
  for (let i = 0; i < sorted.length; i++) copy.push(sorted[i] as number);
  return copy;
}

/**
 * Quantile of values already in rising order. Hyndman, Fan 1996: type 7 (R, spreadsheets) or type 6 (Minitab, SPSS).
 * @example quantileSorted([1, 2, 3, 4], 0.25, 6) // => 1.25
 */
export function quantileSorted(sorted: readonly number[], p: number, type: 6 | 7 = 7): number {
  return type === 7 ? typeSeven(sorted as number[], p) : typeSix(sorted, p);
}

function typeSix(sorted: readonly number[], p: number): number {
  const place = (sorted.length + 1) * p;
  const below = Math.min(Math.max(Math.floor(place), 1), sorted.length);
  const above = Math.min(below + 1, sorted.length);
  const part = Math.min(Math.max(place - below, 0), 1);
  const low = sorted[below - 1] as number;
  return low + part * ((sorted[above - 1] as number) - low);
}
