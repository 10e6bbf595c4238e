/** Adds to one place of a typed array; the place is known to lie inside. */
export function addAt(items: Float64Array | Uint32Array, at: number, by: number): void {
  items[at] = (items[at] as number) + by;
}

/** The number at a place and, after it, one more: for counting sorts. */
export function takeNext(items: Uint32Array, at: number): number {
  const value = items[at] as number;
  items[at] = value + 1;
  return value;
}
