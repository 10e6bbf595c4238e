/** Sum of digits times weights, from the left; digits beyond the weights count nothing. */
export function weightedSum(digits: string, weights: readonly number[]): number {
  let sum = 0;
  for (let at = 0; at < weights.length; at++) sum += (digits.charCodeAt(at) - 48) * (weights[at] ?? 0);
  return sum;
}

/** Weights from `first` down by one. @example falling(10, 9) // => [10, 9, 8, 7, 6, 5, 4, 3, 2] */
export function falling(first: number, length: number): readonly number[] {
  return Array.from({ length }, (_, at) => first - at);
}

/** The digit at a place, as a number. */
export function digitAt(digits: string, at: number): number {
  return digits.charCodeAt(at) - 48;
}
