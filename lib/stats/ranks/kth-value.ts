/**
 * The k-th smallest (from 1) of values too many to list, found by halving: `atMost(t)` counts those not above t.
 * Ends at the value itself, not near it, because the halves go on until no number lies between.
 */
export function kthValue(k: number, least: number, most: number, atMost: (t: number) => number): number {
  let [low, high] = [least, most];
  if (atMost(low) >= k) return low;
  for (;;) {
    const middle = between(low, high);
    if (middle <= low || middle >= high) return high;
    if (atMost(middle) >= k) high = middle;
    else low = middle;
  }
}

/** Halves the sizes when they are far apart, the distance when near: a value near zero is reached as fast as any other. */
function between(low: number, high: number): number {
  if (low < 0 && high > 0) return 0;
  const [near, far] = [Math.min(Math.abs(low), Math.abs(high)), Math.max(Math.abs(low), Math.abs(high))];
  if (far <= 4 * near) return low / 2 + high / 2;
  const size = Math.sqrt(Math.max(near, Number.MIN_VALUE)) * Math.sqrt(far);
  return high > 0 ? size : -size;
}

/** How many differences a − b are at most t; both inputs rising. */
export function differencesAtMost(a: readonly number[], b: readonly number[], t: number): number {
  let count = 0;
  let j = 0; // the first place of b whose difference is at most t moves on as a grows
  for (const value of a) {
    while (j < b.length && value - (b[j] as number) > t) j++;
    if (j === b.length) break;
    count += b.length - j;
  }
  return count;
}

/** How many means of two values (a value with itself too, each pair once) are at most t; input rising. */
export function pairMeansAtMost(values: readonly number[], t: number): number {
  let count = 0;
  let j = values.length - 1;
  for (let i = 0; i < values.length && i <= j; i++) {
    while (j >= i && (values[i] as number) / 2 + (values[j] as number) / 2 > t) j--;
    count += Math.max(0, j - i + 1);
  }
  return count;
}
