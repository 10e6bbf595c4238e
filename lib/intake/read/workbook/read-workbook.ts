import { finding } from "../../findings/finding";
import { turn } from "../../pace";
import type { Finding } from "../../types";
import type { Limits } from "../limits";
import type { Record } from "../records";
import { sheetOf } from "../sheet-of";
import { type Book, readBook } from "./book";
import type { CellRules } from "./cell-text";
import { chooseSheets, type NamedRead, type SkippedSheet, type WorkbookRead } from "./choose-sheets";
import { textOf } from "./pieces";
import { sheetRows } from "./sheet-rows";
import { sharedStrings } from "./strings";
import { dateStyles } from "./styles";
import { unpack } from "./unpack";
import { widened } from "./widened";
import { BrokenMarkup } from "./xml";

export type WorkbookOptions = {
  readonly file: string;
  readonly limits: Limits;
  readonly signal?: AbortSignal | null;
  /** Rows read so far. */
  readonly onProgress?: (rows: number) => void;
};

/** The sheets of a workbook. One that cannot be unpacked or read, or holds no table at all, is refused with the reason. */
export async function readWorkbook(bytes: Uint8Array, options: WorkbookOptions): Promise<WorkbookRead> {
  const { file } = options;
  const unpacked = unpack(bytes);
  if (unpacked.why === "too-large") return refused(finding("too-large", { file }, "a packed file of more than 512 MB"));
  try {
    const book = unpacked.parts && readBook(unpacked.parts);
    if (!book)
      return refused(
        finding("not-a-table", { file }, unpacked.parts ? "a packed file without a workbook" : "a packed file that is broken"),
      );
    return await readSheets(book, options);
  } catch (error) {
    if (error instanceof BrokenMarkup) return refused(finding("not-a-table", { file }, "a workbook whose markup is broken"));
    throw error;
  }
}

function refused(why: Finding): WorkbookRead {
  return { sheets: [], findings: [why], skipped: [] };
}

async function readSheets(book: Book, options: WorkbookOptions): Promise<WorkbookRead> {
  const { file, limits } = options;
  const rules = await rulesOf(book, options);
  const read: NamedRead[] = [];
  const blank: SkippedSheet[] = [];
  for (const { name, hidden, part } of book.sheets) {
    const records = hidden || !part ? [] : await recordsOf(part, rules, options);
    if (records.length === 0) blank.push({ sheet: name, why: hidden ? "hidden" : "blank" });
    else read.push({ name, ...sheetOf(widened(records), { ...named(file, name), said: [], limits }) });
  }
  return chooseSheets(file, read, blank);
}

async function rulesOf({ strings: part, styles, system }: Book, options: WorkbookOptions): Promise<CellRules> {
  const strings: string[] = [];
  for (const some of part ? sharedStrings(part) : []) {
    for (const text of some) strings.push(text);
    await breathe(options);
  }
  return { strings, dates: styles ? dateStyles(textOf(styles)) : [], system };
}

function named(file: string, sheet: string) {
  return { file: `${file} · ${sheet}`, encoding: "workbook", delimiter: "," } as const;
}

async function recordsOf(part: Uint8Array, rules: CellRules, options: WorkbookOptions): Promise<readonly Record[]> {
  const records: Record[] = [];
  for (const some of sheetRows(part, rules)) {
    for (const record of some) records.push(record);
    options.onProgress?.(records.length);
    await breathe(options);
    // a limit broken is broken for good; the rest needn't be read
    if (records.length > options.limits.rows + 1) break;
  }
  return records.filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
}

async function breathe({ signal }: WorkbookOptions): Promise<void> {
  await turn();
  signal?.throwIfAborted();
}
