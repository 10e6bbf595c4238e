/**
 * A design with a leading column of ones and its other columns centred and scaled to spread one, by rows.
 * Newton's method doesn't need it, but its matrices keep their digits.
 */
export interface StandardisedDesign {
  readonly x: Float64Array;
  readonly k: number;
  readonly centre: Float64Array;
  readonly spread: Float64Array;
  readonly names: readonly string[];
}

export interface DesignInput {
  /** One list of numbers a row, without intercept. */
  readonly design?: readonly ArrayLike<number>[] | undefined;
  readonly names?: readonly string[] | undefined;
}

/**
 * @throws RangeError when rows are unlike in length, names don't match, or a covariate is constant; TypeError when a number is not finite
 */
export function standardisedDesign(caller: string, { design, names }: DesignInput, rows: number): StandardisedDesign {
  const columns = design?.[0]?.length ?? 0;
  const labels = names ?? Array.from({ length: columns }, (_, j) => `x${j + 1}`);
  requireShape(caller, design, labels, rows, columns);
  const k = columns + 1;
  const x = new Float64Array(rows * k);
  const centre = new Float64Array(columns);
  const spread = new Float64Array(columns);
  for (let i = 0; i < rows; i++) x[i * k] = 1;
  for (let j = 0; design && j < columns; j++) {
    const values = new Float64Array(rows).map((_, row) => design[row]?.[j] as number);
    [centre[j], spread[j]] = centreAndSpread(values);
    requireVarying(caller, values, labels[j] as string);
    for (let i = 0; i < rows; i++) x[i * k + j + 1] = ((values[i] as number) - (centre[j] as number)) / (spread[j] as number);
  }
  return { x, k, centre, spread, names: labels };
}

function centreAndSpread(values: Float64Array): [number, number] {
  const mean = values.reduce((sum, value) => sum + value / values.length, 0);
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2 / values.length, 0);
  return [mean, Math.sqrt(square)];
}

function requireVarying(caller: string, values: Float64Array, name: string): void {
  const first = values[0];
  if (values.every((value) => value === first))
    throw new RangeError(`${caller} requires covariates that vary, received one value only in ${name}`);
}

function requireShape(caller: string, design: DesignInput["design"], names: readonly string[], rows: number, columns: number): void {
  if (names.length !== columns) throw new RangeError(`${caller} requires a name for each covariate (${columns}), received ${names.length}`);
  if (!design) return;
  if (design.length !== rows)
    throw new RangeError(`${caller} requires a design with a row for each time (${rows}), received ${design.length}`);
  for (let i = 0; i < rows; i++) {
    const row = design[i] as ArrayLike<number>;
    if (row.length !== columns)
      throw new RangeError(`${caller} requires design rows of ${columns} numbers, received ${row.length} at ${i}`);
    for (let j = 0; j < columns; j++) {
      if (!Number.isFinite(row[j])) throw new TypeError(`${caller} requires finite numbers in ${names[j]}, received another at row ${i}`);
    }
  }
}
