import { finding } from "../findings/finding";
import type { Finding, Sheet } from "../types";
import { findHeaderRow } from "./header-row";
import type { Limits } from "./limits";
import { nameColumns } from "./name-columns";
import { overLimit } from "./over-limit";
import type { Record } from "./records";
import { shapeRows } from "./shape-rows";

export type SheetRead =
  | { readonly sheet: Sheet; readonly findings: readonly Finding[] }
  | { readonly sheet: null; readonly findings: readonly Finding[] };

type Made = Pick<Sheet, "file" | "encoding" | "delimiter"> & {
  /** What there is to say of the file before its headers are looked for. */
  readonly said: readonly Finding[];
  readonly limits: Limits;
};

/** Records as a sheet: limits kept, headers found, titles above them passed over, rows as wide as the headers. */
export function sheetOf(records: readonly Record[], { file, encoding, delimiter, said, limits }: Made): SheetRead {
  const over = overLimit(records, limits);
  if (over) return refused(finding(over.code, { file, row: over.row }, over.found));
  const at = findHeaderRow(records);
  const head = at === null ? undefined : records[at];
  if (at === null || !head) return refused(finding("no-header", { file }, "a first row of numbers or dates"));
  const { headerCells, rows, rowNumbers, ragged } = shapeRows(head.cells, records.slice(at + 1));
  if (rows.length === 0 && ragged.length === 0)
    return refused(finding("header-only", { file }, `${headerCells.length} headers and no row`));
  const headers = nameColumns(headerCells);
  const titles = records.slice(0, at).map(({ line }) => finding("title-row-skipped", { file, row: line }, "a row above the headers"));
  const blank = headers.filter((_, i) => (headerCells[i] as string).trim() === "");
  const findings = [
    ...said,
    ...titles,
    ...blank.map((column) => finding("blank-header", { file, column }, "a column without a header")),
    ...raggedFindings({ file, headers, ragged }),
  ];
  return { sheet: { file, encoding, delimiter, headers, headerCells, rows, rowNumbers, ragged }, findings };
}

function refused(finding: Finding): SheetRead {
  return { sheet: null, findings: [finding] };
}

/** The rows of a sheet that have more or fewer cells than there are headers. */
export function raggedFindings({ file, headers, ragged }: Pick<Sheet, "file" | "headers" | "ragged">): readonly Finding[] {
  return ragged.map(({ row, cells }) => finding("ragged-row", { file, row }, `${cells.length} cells`, { columns: headers.length }));
}
