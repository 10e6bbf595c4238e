import { chiSquareUpper } from "./distributions";
import type { TestResult } from "./record";
import { readTable, type Table } from "./tables/check-table";

/**
 * Pearson's chi-square test of a cross-table, with Cramér's V and the smallest expected count.
 * The continuity correction of Yates takes 0.5 off each |observed − expected|, never more than there is; for 2 × 2 only.
 * Pearson K. Philos Mag 1900;50:157-175; Yates F. J R Stat Soc Suppl 1934;1:217-235.
 * @param table rows of counts
 * @throws RangeError when the table is smaller than 2 × 2, holds anything but whole counts, or a row or column is empty
 * @example chiSquare({ table: [[10, 20], [20, 10]] }).statistic.toFixed(3) // => "6.667"
 */
export function chiSquare({
  table,
  continuity = false,
}: {
  table: readonly (readonly number[])[];
  continuity?: boolean;
}): TestResult & { readonly statistic: number; readonly df: number; readonly p: number; cramersV: number; smallestExpected: number } {
  const read = readTable("chiSquare", table);
  const df = (read.rowTotals.length - 1) * (read.columnTotals.length - 1);
  if (continuity && df !== 1) throw new RangeError(`chiSquare requires a 2 by 2 table for the continuity correction, received df ${df}`);
  const statistic = pearson(read, continuity);
  const smaller = Math.min(read.rowTotals.length, read.columnTotals.length);
  return {
    statistic,
    df,
    p: chiSquareUpper(statistic, df),
    cramersV: Math.sqrt(pearson(read, false) / read.n / (smaller - 1)),
    smallestExpected: (Math.min(...read.rowTotals) * Math.min(...read.columnTotals)) / read.n,
    n: read.n,
    patients: null,
    method: "Pearson chi-square test",
    convention: continuity ? "with Yates’ continuity correction" : "without continuity correction",
    notes: [],
  };
}

function pearson({ counts, rowTotals, columnTotals, n }: Table, continuity: boolean): number {
  // In a 2 × 2 table all |observed − expected| are equal, so the smallest of them is any of them.
  const apart = (i: number, j: number) => {
    const difference = Math.abs((counts[i]?.[j] as number) - ((rowTotals[i] as number) * (columnTotals[j] as number)) / n);
    return difference - (continuity ? Math.min(0.5, difference) : 0);
  };
  let sum = 0;
  rowTotals.forEach((row, i) => {
    columnTotals.forEach((column, j) => {
      sum += apart(i, j) ** 2 / ((row * column) / n);
    });
  });
  return sum;
}
