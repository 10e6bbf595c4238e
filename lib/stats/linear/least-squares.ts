/**
 * Columns of one length, each by itself. A design has many rows and few columns: what lies side by side is gone through many times faster than
 * an array a row.
 */
export type Columns = readonly Float64Array[];

/** X = QR: the design's columns made orthonormal, and the triangle that leads back, p × p by rows. */
export interface Factored {
  readonly q: Columns;
  readonly r: Float64Array;
}

/** Rows of p numbers as columns, behind a column of ones when there is an intercept. */
export function columnsOf(rows: readonly ArrayLike<number>[], { intercept = false }: { readonly intercept?: boolean } = {}): Columns {
  const width = rows[0]?.length ?? 0;
  const columns = Array.from({ length: width }, () => new Float64Array(rows.length));
  for (let i = 0; i < rows.length; i++) {
    const row = rows[i] as ArrayLike<number>;
    for (let j = 0; j < width; j++) (columns[j] as Float64Array)[i] = row[j] as number;
  }
  return intercept ? [new Float64Array(rows.length).fill(1), ...columns] : columns;
}

/**
 * QR factors of a design of full column rank. Normal equations are never formed: they lose half the digits.
 * @param design p columns of n numbers, n ≥ p
 * @throws RangeError when there are fewer rows than columns, or a column is a combination of those before it
 */
export function factored(caller: string, design: Columns): Factored {
  const [p, n] = [design.length, design[0]?.length ?? 0];
  if (n < p) throw new RangeError(`${caller} requires at least as many rows as columns (${p}), received ${n}`);
  const factors = orthonormalised(design);
  design.forEach((column, j) => {
    requireOwnDirection(caller, column, factors.r[j * p + j] as number, j);
  });
  return factors;
}

/**
 * QR by Gram and Schmidt, each column freed twice from those before it: twice is enough for columns orthogonal to the last digit.
 * A column that has nothing of its own left gives noise, or zeros. Giraud L, Langou J, Rozložník M, van den Eshof J. Numer Math 2005;101:87-100.
 */
export function orthonormalised(design: Columns): Factored {
  const p = design.length;
  const r = new Float64Array(p * p);
  const q: Float64Array[] = [];
  design.forEach((column, j) => {
    const own = Float64Array.from(column);
    for (let pass = 0; pass < 2; pass++) {
      q.forEach((other, k) => {
        r[k * p + j] = (r[k * p + j] as number) + freeFrom(own, other);
      });
    }
    const length = Math.sqrt(product(own, own));
    r[j * p + j] = length;
    q.push(length > 0 ? divided(own, length) : own);
  });
  return { q, r };
}

/** Takes the direction `other` out of `own`. @returns how much of it there was */
function freeFrom(own: Float64Array, other: Float64Array): number {
  const part = product(own, other);
  for (let i = 0; i < own.length; i++) own[i] = (own[i] as number) - part * (other[i] as number);
  return part;
}

function product(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

function divided(own: Float64Array, by: number): Float64Array {
  for (let i = 0; i < own.length; i++) own[i] = (own[i] as number) / by;
  return own;
}

/** Below 1e-9 of its length a column has nothing of its own left after the columns before it. */
function requireOwnDirection(caller: string, column: Float64Array, own: number, place: number): void {
  if (own > 1e-9 * Math.sqrt(product(column, column))) return;
  throw new RangeError(
    `${caller} requires columns that aren't combinations of one another, received one at column ${place} (intercept counted)`,
  );
}

/** The b that makes ‖y − Xb‖ least. */
export function coefficientsOf({ q, r }: Factored, y: ArrayLike<number>): Float64Array {
  return backSubstituted(
    r,
    Float64Array.from(q, (column) => product(column, y)),
  );
}

/** The x with R x = b. */
export function backSubstituted(r: Float64Array, b: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(b);
  const p = x.length;
  for (let j = p - 1; j >= 0; j--) {
    let sum = x[j] as number;
    for (let k = j + 1; k < p; k++) sum -= (r[j * p + k] as number) * (x[k] as number);
    x[j] = sum / (r[j * p + j] as number);
  }
  return x;
}

/** The x with Rᵀ x = b. */
export function forwardSubstituted(r: Float64Array, b: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(b);
  const p = x.length;
  for (let j = 0; j < p; j++) {
    let sum = x[j] as number;
    for (let k = 0; k < j; k++) sum -= (r[k * p + j] as number) * (x[k] as number);
    x[j] = sum / (r[j * p + j] as number);
  }
  return x;
}

/** X b, row by row. */
export function fittedBy(design: Columns, coefficients: ArrayLike<number>): Float64Array {
  const fitted = new Float64Array(design[0]?.length ?? 0);
  design.forEach((column, j) => {
    const times = coefficients[j] as number;
    for (let i = 0; i < fitted.length; i++) fitted[i] = (fitted[i] as number) + times * (column[i] as number);
  });
  return fitted;
}
