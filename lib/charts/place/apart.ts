/**
 * Moves words that stand beside marks apart: in the order of their heights, none nearer to the next than `gap` px, together about where
 * they would stand. Returns the height of each in the order given.
 * @example apart([10, 12], 8) // => [7, 15]
 */
export function apart(ys: readonly number[], gap: number): number[] {
  const order = ys.map((_, index) => index).sort((a, b) => (ys[a] ?? 0) - (ys[b] ?? 0) || a - b);
  const out = [...ys];
  let heap: number[] = [];
  const heaps: number[][] = [];
  for (const index of order) {
    heap = [index];
    heaps.push(heap);
    for (let above = heaps.at(-2); above !== undefined && bottomOf(above, ys, gap) > topOf(heap, ys, gap) - gap; above = heaps.at(-2)) {
      heap = [...above, ...heap];
      heaps.splice(-2, 2, heap);
    }
  }
  for (const members of heaps) for (const [place, index] of members.entries()) out[index] = topOf(members, ys, gap) + place * gap;
  return out;
}

/** The first height of a heap that stands about the mean of its members. */
function topOf(heap: readonly number[], ys: readonly number[], gap: number): number {
  const mean = heap.reduce((sum, index) => sum + (ys[index] ?? 0), 0) / heap.length;
  return mean - ((heap.length - 1) * gap) / 2;
}

function bottomOf(heap: readonly number[], ys: readonly number[], gap: number): number {
  return topOf(heap, ys, gap) + (heap.length - 1) * gap;
}
