import { writeCsv } from "../csv/write-csv";
import type { Finding, Sheet } from "../types";
import type { Prepared } from "./prepared";

const warning =
  "Holds names and numbers of patients, as the sheet it comes from: keep it where that sheet is kept, and delete it when it is mended.";
const reasonsHeader = "Why set aside";

/**
 * Rows set aside, in their file's own columns with the reasons beside them, to be mended and brought again. Made where the file is; its first
 * line says that it holds identifiers. Of several files each has its own part.
 */
export function refusedCsv({ sheets, refused }: Pick<Prepared, "sheets" | "refused">): string {
  const parts = sheets.flatMap((sheet) => {
    const rows = rowsOf(sheet, refused);
    return rows.length === 0 ? [] : [writeCsv([[warning], [...sheet.headerCells, reasonsHeader], ...rows], sheet.delimiter)];
  });
  return parts.join("\r\n");
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
