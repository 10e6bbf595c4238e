/** Counts in rows and columns, with their margins. */
export interface Table {
  readonly counts: readonly (readonly number[])[];
  readonly rowTotals: readonly number[];
  readonly columnTotals: readonly number[];
  readonly n: number;
}

/**
 * Reads a cross-table of counts.
 * @throws RangeError below two rows or columns, with unequal rows, a count that isn't a whole number from 0, or an empty row or column
 */
export function readTable(caller: string, table: readonly (readonly number[])[]): Table {
  const columns = table[0]?.length ?? 0;
  if (table.length < 2 || columns < 2) {
    throw new RangeError(`${caller} requires a table of at least two rows and two columns, received ${table.length} by ${columns}`);
  }
  table.forEach((row, i) => {
    if (row.length !== columns)
      throw new RangeError(`${caller} requires ${columns} counts in each row, received ${row.length} in row ${i}`);
    row.forEach((count, j) => {
      if (!Number.isInteger(count) || count < 0) {
        throw new RangeError(`${caller} requires whole counts from 0, received ${String(count)} in row ${i}, column ${j}`);
      }
    });
  });
  const rowTotals = table.map(sum);
  const columnTotals = Array.from({ length: columns }, (_, j) => sum(table.map((row) => row[j] as number)));
  requireFilled(caller, "row", rowTotals);
  requireFilled(caller, "column", columnTotals);
  return { counts: table, rowTotals, columnTotals, n: sum(rowTotals) };
}

function requireFilled(caller: string, what: string, totals: readonly number[]): void {
  const empty = totals.indexOf(0);
  if (empty >= 0) throw new RangeError(`${caller} requires a count above zero in each ${what}, received none in ${what} ${empty}`);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
