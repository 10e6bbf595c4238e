import { type ColumnSuspect, suspectColumn } from "../detect";
import type { Sheet } from "../types";
import { tallyOf } from "./column-cells";

/** The detectors of a mapped column of codes, flags or numbers. */
export function suspectOf(sheet: Sheet, index: number, known: () => ReadonlySet<string>): ColumnSuspect {
  return suspectColumn({ tally: () => tallyOf(sheet, index), header: sheet.headerCells[index] ?? "", coded: true, known });
}
