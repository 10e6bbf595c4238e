import { finding } from "../findings/finding";
import type { Delimiter, Finding, Sheet } from "../types";
import { decode } from "./decode";
import { findHeaderRow } from "./header-row";
import { defaultLimits, type Limits } from "./limits";
import { nameColumns } from "./name-columns";
import { kindByFirstBytes, kindByText } from "./not-a-table";
import { parseRecords, type Record } from "./records";
import { takeSepLine } from "./sep-line";
import { shapeRows } from "./shape-rows";
import { sniffDelimiter } from "./sniff-delimiter";

export type SheetRead =
  | { readonly sheet: Sheet; readonly findings: readonly Finding[] }
  | { readonly sheet: null; readonly findings: readonly Finding[] };

/**
 * A delimited text file as headers and rows of strings. Encoding, delimiter and header row are found; a file that is no table, or more than
 * the limits allow, is refused whole with the reason (`sheet: null`). Never throws for what a file holds.
 */
export function readSheet(bytes: Uint8Array, { file, limits = defaultLimits }: { file: string; limits?: Limits }): SheetRead {
  const refuse = (code: Parameters<typeof finding>[0], found: string, row: number | null = null): SheetRead => ({
    sheet: null,
    findings: [finding(code, { file, row }, found)],
  });
  if (bytes.length === 0) return refuse("empty-file", "0 bytes");
  if (bytes.length > limits.bytes) return refuse("too-large", `${Math.ceil(bytes.length / 1024 / 1024)} MB`);
  const magic = kindByFirstBytes(bytes);
  if (magic) return refuse("not-a-table", magic);
  const decoded = decode(bytes);
  if (!decoded) return refuse("unreadable-encoding", "bytes that are no text in the encoding that the file's first bytes name");
  const strange = kindByText(decoded.text);
  if (strange) return refuse("not-a-table", strange);
  if (decoded.text.trim() === "") return refuse("empty-file", "blanks only");

  const sep = takeSepLine(decoded.text);
  const delimiter = sep.delimiter ?? sniffDelimiter(sep.rest) ?? ",";
  const { records, unclosedQuoteAt } = parseRecords(sep.rest, delimiter, 1 + sep.lines);
  if (unclosedQuoteAt !== null) return refuse("unclosed-quote", "a quotation mark without its partner", unclosedQuoteAt);
  const over = overLimit(records, limits);
  if (over) return refuse(over.code, over.found, over.row);
  const guessed = decoded.guessed ? [finding("encoding-guessed", { file }, decoded.encoding)] : [];
  return withHeaders(records, { file, encoding: decoded.encoding, delimiter, guessed, refuse });
}

type Found = {
  readonly file: string;
  readonly encoding: Sheet["encoding"];
  readonly delimiter: Delimiter;
  readonly guessed: readonly Finding[];
  readonly refuse: (code: "no-header" | "header-only", found: string) => SheetRead;
};

function withHeaders(records: readonly Record[], { file, encoding, delimiter, guessed, refuse }: Found): SheetRead {
  const at = findHeaderRow(records);
  const head = at === null ? undefined : records[at];
  if (at === null || !head) return refuse("no-header", "a first row of numbers or dates");
  const titles = records.slice(0, at).map(({ line }) => finding("title-row-skipped", { file, row: line }, "a row above the headers"));
  const { headerCells, rows, rowNumbers, ragged } = shapeRows(head.cells, records.slice(at + 1));
  if (rows.length === 0 && ragged.length === 0) return refuse("header-only", `${headerCells.length} headers and no row`);
  const headers = nameColumns(headerCells);
  const blank = headers.filter((_, i) => (headerCells[i] as string).trim() === "");
  const findings = [
    ...guessed,
    ...titles,
    ...blank.map((column) => finding("blank-header", { file, column }, "a column without a header")),
    ...raggedFindings({ file, headers, ragged }),
  ];
  return { sheet: { file, encoding, delimiter, headers, headerCells, rows, rowNumbers, ragged }, findings };
}

/** The rows of a sheet that have more or fewer cells than there are headers. */
export function raggedFindings({ file, headers, ragged }: Pick<Sheet, "file" | "headers" | "ragged">): readonly Finding[] {
  return ragged.map(({ row, cells }) => finding("ragged-row", { file, row }, `${cells.length} cells`, { columns: headers.length }));
}

function overLimit(records: readonly Record[], limits: Limits) {
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
