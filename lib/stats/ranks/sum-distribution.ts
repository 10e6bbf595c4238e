/**
 * Of all ways to draw `size` of the ranks, the share for each sum of doubled ranks (midranks are halves, so doubled they are whole).
 * Built rank by rank; shares, not counts, so that nothing overflows.
 */
export function sumsOfDraws(ranks: ArrayLike<number>, size: number): Float64Array {
  const total = doubled(ranks);
  const ways = Array.from({ length: size + 1 }, () => new Float64Array(total + 1));
  (ways[0] as Float64Array)[0] = 1;
  for (let i = 0; i < ranks.length; i++) {
    const rank = Math.round(2 * (ranks[i] as number));
    for (let drawn = Math.min(size, i + 1); drawn > 0; drawn--)
      addShifted(ways[drawn] as Float64Array, ways[drawn - 1] as Float64Array, rank);
  }
  return scaled(ways[size] as Float64Array);
}

/** Of all 2ⁿ signs, the share for each doubled sum of the ranks with a positive sign. */
export function sumsOfSigns(ranks: ArrayLike<number>): Float64Array {
  const ways = new Float64Array(doubled(ranks) + 1);
  ways[0] = 1;
  for (let i = 0; i < ranks.length; i++) addShifted(ways, ways, Math.round(2 * (ranks[i] as number)));
  return scaled(ways);
}

/** P(sum at least as far from its middle as the one seen), P(sum ≤ seen), P(sum ≥ seen); sums undoubled. */
export function tailsOf(shares: Float64Array, middle: number, seen: number): { twoSided: number; less: number; greater: number } {
  let [twoSided, less, greater] = [0, 0, 0];
  const far = Math.abs(seen - middle) - 1e-9;
  shares.forEach((share, twice) => {
    if (Math.abs(twice / 2 - middle) >= far) twoSided += share;
    if (twice / 2 <= seen) less += share;
    if (twice / 2 >= seen) greater += share;
  });
  return { twoSided: Math.min(1, twoSided), less: Math.min(1, less), greater: Math.min(1, greater) };
}

/** The smallest sum q with P(sum ≤ q) ≥ p, for ranks without ties. */
export function quantileOfSums(shares: Float64Array, p: number): number {
  let twice = 0;
  let below = shares[0] as number;
  while (below < p * (1 - 1e-12) && twice + 1 < shares.length) below += shares[++twice] as number;
  return twice / 2;
}

function addShifted(to: Float64Array, from: Float64Array, shift: number): void {
  for (let sum = to.length - 1; sum >= shift; sum--) to[sum] = (to[sum] as number) + (from[sum - shift] as number);
}

function doubled(ranks: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < ranks.length; i++) sum += Math.round(2 * (ranks[i] as number));
  return sum;
}

function scaled(ways: Float64Array): Float64Array {
  const total = ways.reduce((sum, way) => sum + way, 0);
  return ways.map((way) => way / total);
}
