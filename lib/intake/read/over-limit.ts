import type { Limits } from "./limits";
import type { Record } from "./records";

/** The first limit that records break; `null` when they keep all. */
export function overLimit(records: readonly Record[], limits: Limits) {
  if (records.length > limits.rows + 1) return { code: "too-many-rows", found: `${records.length} rows`, row: null } as const;
  for (const { cells, line } of records) {
    if (cells.length > limits.columns) return { code: "too-many-columns", found: `${cells.length} columns`, row: line } as const;
    for (const cell of cells) {
      if (cell.length > limits.cellCharacters)
        return { code: "cell-too-long", found: `a cell of ${cell.length} characters`, row: line } as const;
    }
  }
  return null;
}
