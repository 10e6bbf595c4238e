/** Least and greatest of many; `null` of none. Without spreading, which fails past some hundred thousand. */
export function spanOf(values: readonly number[]): readonly [low: number, high: number] | null {
  const [first] = values;
  if (first === undefined) return null;
  let [low, high] = [first, first];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [low, high];
}
