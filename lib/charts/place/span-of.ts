/** Least and greatest of many; `null` of none. Without spreading, which fails past some hundred thousand. */
export function spanOf(values: readonly number[]): readonly [low: number, high: number] | null {
  const [first] = values;
  if (first === undefined) return null;
  return values.reduce<readonly [number, number]>(([low, high], value) => [Math.min(low, value), Math.max(high, value)], [first, first]);
}
