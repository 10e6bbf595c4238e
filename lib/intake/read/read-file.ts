import type { Finding, Sheet } from "../types";
import { defaultLimits, type Limits } from "./limits";
import { isPacked } from "./not-a-table";
import { readSheet } from "./read-sheet";
import type { SkippedSheet } from "./workbook/choose-sheets";
import { readWorkbook } from "./workbook/read-workbook";

/** A file as sheets: one of a file of text, one or more of a workbook; none when the file is refused, its findings then say why. */
export type FileRead = {
  readonly sheets: readonly Sheet[];
  readonly findings: readonly Finding[];
  /** Sheets of a workbook that were passed over. */
  readonly skipped: readonly SkippedSheet[];
};
export type ReadFileOptions = {
  readonly file: string;
  readonly limits?: Limits;
  readonly signal?: AbortSignal | null;
  /** Rows read so far of a workbook. */
  readonly onProgress?: (rows: number) => void;
};

/**
 * Any file that a unit keeps: delimited text (read at once, as by `readSheet`), or a workbook (`.xlsx`, told by its bytes and not its name;
 * read in turns). Every visible sheet of a workbook that is a table becomes a `Sheet` whose `file` is `log.xlsx · 2024`; dates stand in it as
 * year-month-day, numbers with a point, of merged cells the first holds the value. Runs in a page, a worker and Node, and starts no worker.
 * @throws the signal's reason when it is told to stop; nothing for what a file holds
 */
export async function readFile(bytes: Uint8Array, { file, limits = defaultLimits, ...pace }: ReadFileOptions): Promise<FileRead> {
  if (isPacked(bytes) && bytes.length <= limits.bytes) return readWorkbook(bytes, { file, limits, ...pace });
  const { sheet, findings } = readSheet(bytes, { file, limits });
  return { sheets: sheet ? [sheet] : [], findings, skipped: [] };
}
