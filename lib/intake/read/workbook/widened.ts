import type { Record } from "../records";

/** Records of one width: a workbook leaves blank cells at the end of a row away. */
export function widened(records: readonly Record[]): readonly Record[] {
  const width = records.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  return records.map(({ cells, line }) =>
    cells.length === width ? { cells, line } : { cells: [...cells, ...Array<string>(width - cells.length).fill("")], line },
  );
}
