import { sortedCopy } from "@/lib/stats";

/** From so many equal values on, a heap is a count in whole units (days of latency, say) and not a coincidence. */
const heapFrom = 12;
/** Share of the step between two values that a block may take: the gap keeps them apart. */
const blockShare = 0.8;

/**
 * Whole units would pile their discs into needles. Where values heap, equal ones stand side by side in a block about their place, which
 * ends before the next value's begins; a block is filled from its middle. Other values keep their x.
 * @example spreadTies([0, 20], 2) // => [0, 20]
 */
export function spreadTies(xs: readonly number[], radius: number): readonly number[] {
  return spreader(xs)(radius);
}

/** The same for several radii: heaps are counted once. */
export function spreader(xs: readonly number[]): (radius: number) => readonly number[] {
  const heaps = new Map<number, number>();
  let highest = 0;
  for (const x of xs) {
    const height = (heaps.get(x) ?? 0) + 1;
    heaps.set(x, height);
    highest = Math.max(highest, height);
  }
  if (highest < heapFrom) return () => xs;
  const step = leastStep([...heaps.keys()]);
  return (radius) => {
    const columns = Math.floor((blockShare * step) / (2 * radius));
    if (columns < 2) return xs;
    const seen = new Map<number, number>();
    return xs.map((x) => {
      const nth = seen.get(x) ?? 0;
      seen.set(x, nth + 1);
      return x + fromMiddle(nth % columns, columns) * 2 * radius;
    });
  };
}

function leastStep(values: readonly number[]): number {
  const sorted = sortedCopy(values);
  const step = sorted.reduce(
    (least, value, index) => (index === 0 ? least : Math.min(least, value - (sorted[index - 1] as number))),
    Infinity,
  );
  // a heap that stands alone has no neighbour to keep away from; its block is as wide as forty px allow
  return step === Infinity ? 50 : step;
}

/** 0, 1, −1, 2, −2 … columns from the middle; half a column aside where their number is even, so that the block stands about its place. */
function fromMiddle(nth: number, columns: number): number {
  const step = Math.ceil(nth / 2) * (nth % 2 === 1 ? 1 : -1);
  return step - (columns % 2 === 0 ? 0.5 : 0);
}
