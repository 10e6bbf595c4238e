/** Arithmetic of short vectors. */

export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** Dot product of p entries of a from place `i` on and of b from place `j` on. */
export function dotAt(a: ArrayLike<number>, i: number, b: ArrayLike<number>, j: number, p: number): number {
  let sum = 0;
  for (let k = 0; k < p; k++) sum += (a[i + k] as number) * (b[j + k] as number);
  return sum;
}
