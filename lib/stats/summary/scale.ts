/**
 * A power of two near the largest size in `values`, or 1 when squares of the values neither overflow nor vanish.
 * Dividing by it is exact, so it changes no digit of an ordinary result.
 */
export function powerOfTwoScale(values: ArrayLike<number>): number {
  let largest = 0;
  for (let i = 0; i < values.length; i++) largest = Math.max(largest, Math.abs(values[i] as number));
  if (largest === 0 || (largest > 1e-100 && largest < 1e100)) return 1;
  return 2 ** Math.max(-1021, Math.floor(Math.log2(largest)));
}
