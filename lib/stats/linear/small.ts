/** Arithmetic of short vectors and p × p matrices by rows. */

export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** Matrix (by rows) times vector. */
export function times(matrix: Float64Array, vector: Float64Array): Float64Array {
  const p = vector.length;
  const result = new Float64Array(p);
  for (let i = 0; i < p; i++) {
    let sum = 0;
    for (let j = 0; j < p; j++) sum += (matrix[i * p + j] as number) * (vector[j] as number);
    result[i] = sum;
  }
  return result;
}

/** Product of two p × p matrices by rows. */
export function product(left: Float64Array, right: Float64Array, p: number): Float64Array {
  const result = new Float64Array(p * p);
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < p; j++) {
      let sum = 0;
      for (let k = 0; k < p; k++) sum += (left[i * p + k] as number) * (right[k * p + j] as number);
      result[i * p + j] = sum;
    }
  }
  return result;
}
