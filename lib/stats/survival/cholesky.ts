/** Pivots this much smaller than their own diagonal mean a column that the others explain. */
const smallestPivot = 1e-12;

/**
 * Lower triangle L with L·Lᵀ = the symmetric matrix (k × k by rows); null when it is not positive definite.
 */
export function cholesky(matrix: Float64Array, k: number): Float64Array | null {
  const lower = new Float64Array(k * k);
  for (let j = 0; j < k; j++) {
    for (let i = j; i < k; i++) {
      let sum = matrix[i * k + j] as number;
      for (let m = 0; m < j; m++) sum -= (lower[i * k + m] as number) * (lower[j * k + m] as number);
      if (i > j) lower[i * k + j] = sum / (lower[j * k + j] as number);
      else if (sum > smallestPivot * (matrix[j * k + j] as number)) lower[j * k + j] = Math.sqrt(sum);
      else return null;
    }
  }
  return lower;
}

/** x with L·Lᵀ·x = right. */
export function solveCholesky(lower: Float64Array, right: ArrayLike<number>): Float64Array {
  const k = right.length;
  const x = Float64Array.from(right);
  for (let i = 0; i < k; i++) {
    for (let m = 0; m < i; m++) x[i] = (x[i] as number) - (lower[i * k + m] as number) * (x[m] as number);
    x[i] = (x[i] as number) / (lower[i * k + i] as number);
  }
  for (let i = k - 1; i >= 0; i--) {
    for (let m = i + 1; m < k; m++) x[i] = (x[i] as number) - (lower[m * k + i] as number) * (x[m] as number);
    x[i] = (x[i] as number) / (lower[i * k + i] as number);
  }
  return x;
}

/** (L·Lᵀ)⁻¹, by rows. */
export function inverseOfCholesky(lower: Float64Array, k: number): Float64Array {
  const inverse = new Float64Array(k * k);
  for (let j = 0; j < k; j++) {
    const column = solveCholesky(
      lower,
      Float64Array.from({ length: k }, (_, i) => (i === j ? 1 : 0)),
    );
    for (let i = 0; i < k; i++) inverse[i * k + j] = column[i] as number;
  }
  return inverse;
}

/** A·M·Aᵀ for A (rows × k) and symmetric M (k × k), by rows. */
export function sandwich(a: Float64Array, m: Float64Array, k: number): Float64Array {
  const rows = a.length / k;
  const result = new Float64Array(rows * rows);
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < rows; j++) {
      let sum = 0;
      for (let p = 0; p < k; p++) {
        for (let q = 0; q < k; q++) sum += (a[i * k + p] as number) * (m[p * k + q] as number) * (a[j * k + q] as number);
      }
      result[i * rows + j] = sum;
    }
  }
  return result;
}
