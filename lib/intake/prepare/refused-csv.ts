import { writeCsv } from "../csv/write-csv";
import type { Finding, Sheet } from "../types";
import type { Prepared } from "./prepared";

const warning =
  "Holds names and numbers of patients, as the sheet it comes from: keep it where that sheet is kept, and delete it when it is mended.";
const reasonsHeader = "Why set aside";

/** Rows of one sheet that were set aside, as text to be saved: `file` is the sheet they come from. */
export type RefusedFile = { readonly file: string; readonly rows: number; readonly csv: string };

/**
 * Rows set aside, in their sheet's own columns with the reasons beside them, to be mended and brought again: a file a sheet, so that each can
 * be read as it is. Made where the files are; the first line says that it holds identifiers.
 */
export function refusedFiles({ sheets, refused }: Pick<Prepared, "sheets" | "refused">): readonly RefusedFile[] {
  return sheets.flatMap((sheet) => {
    const rows = rowsOf(sheet, refused);
    if (rows.length === 0) return [];
    return [
      { file: sheet.file, rows: rows.length, csv: writeCsv([[warning], [...sheet.headerCells, reasonsHeader], ...rows], sheet.delimiter) },
    ];
  });
}

/** All of them in one text; of several sheets each has its own part. To be brought again as it is, of one sheet only. */
export function refusedCsv(prepared: Pick<Prepared, "sheets" | "refused">): string {
  return refusedFiles(prepared)
    .map(({ csv }) => csv)
    .join("\r\n");
}

function rowsOf(sheet: Sheet, refused: Prepared["refused"]): readonly (readonly string[])[] {
  const places = new Map(sheet.rowNumbers.map((row, index) => [row, index]));
  const ragged = new Map(sheet.ragged.map(({ row, cells }) => [row, cells]));
  return refused
    .filter(({ file }) => file === sheet.file)
    .map(({ row, reasons }) => [
      ...widened(sheet.rows[places.get(row) ?? -1] ?? ragged.get(row) ?? [], sheet),
      reasons.map(reasonText).join(" · "),
    ]);
}

function widened(cells: readonly string[], { headers }: Sheet): readonly string[] {
  return cells.length >= headers.length ? cells : [...cells, ...Array<string>(headers.length - cells.length).fill("")];
}

function reasonText({ column, code, found, expected, mend }: Finding): string {
  return `${column ? `${column}: ` : ""}${code}: found ${found}, expected ${expected}. ${mend}`;
}
