import { Matrix, QrDecomposition } from "ml-matrix";

/** X = QR: the design's columns made orthonormal, and the triangle that leads back. */
export interface Factored {
  readonly q: Matrix;
  readonly r: Matrix;
}

/**
 * QR factors of a design of full column rank. Normal equations are never formed: they lose half the digits.
 * @param rows n rows of p numbers, n ≥ p
 * @throws RangeError when there are fewer rows than columns, or a column is a combination of those before it
 */
export function factored(caller: string, rows: readonly ArrayLike<number>[]): Factored {
  const columns = rows[0]?.length ?? 0;
  if (rows.length < columns)
    throw new RangeError(`${caller} requires at least as many rows as columns (${columns}), received ${rows.length}`);
  const design = new Matrix(rows);
  const qr = new QrDecomposition(design);
  const [q, r] = [qr.orthogonalMatrix, qr.upperTriangularMatrix];
  for (let j = 0; j < columns; j++) requireOwnDirection(caller, design, r, j);
  return { q, r };
}

/** Below 1e-9 of its length a column has nothing of its own left after the columns before it. */
function requireOwnDirection(caller: string, design: Matrix, r: Matrix, column: number): void {
  let square = 0;
  for (let i = 0; i < design.rows; i++) square += design.get(i, column) ** 2;
  if (Math.abs(r.get(column, column)) > 1e-9 * Math.sqrt(square)) return;
  throw new RangeError(
    `${caller} requires columns that aren't combinations of one another, received one at column ${column} (intercept counted)`,
  );
}

/** The b that makes ‖y − Xb‖ least. */
export function coefficientsOf({ q, r }: Factored, y: ArrayLike<number>): Float64Array {
  const projected = new Float64Array(q.columns);
  for (let i = 0; i < q.rows; i++) {
    const value = y[i] as number;
    for (let j = 0; j < q.columns; j++) projected[j] = (projected[j] as number) + q.get(i, j) * value;
  }
  return backSubstituted(r, projected);
}

/** The x with R x = b. */
function backSubstituted(r: Matrix, b: Float64Array): Float64Array {
  const x = Float64Array.from(b);
  for (let j = x.length - 1; j >= 0; j--) {
    let sum = x[j] as number;
    for (let k = j + 1; k < x.length; k++) sum -= r.get(j, k) * (x[k] as number);
    x[j] = sum / r.get(j, j);
  }
  return x;
}

/** The x with Rᵀ x = b. */
export function forwardSubstituted(r: Matrix, b: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(b);
  for (let j = 0; j < x.length; j++) {
    let sum = x[j] as number;
    for (let k = 0; k < j; k++) sum -= r.get(k, j) * (x[k] as number);
    x[j] = sum / r.get(j, j);
  }
  return x;
}

/** X b, row by row. */
export function fittedBy(rows: readonly ArrayLike<number>[], coefficients: Float64Array): Float64Array {
  return Float64Array.from(rows, (row) => {
    let sum = 0;
    for (let j = 0; j < coefficients.length; j++) sum += (row[j] as number) * (coefficients[j] as number);
    return sum;
  });
}
