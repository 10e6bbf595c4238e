import { finding } from "../../findings/finding";
import type { Finding, Sheet } from "../../types";
import { recognised } from "../header-row";
import type { SheetRead } from "../sheet-of";

/** A sheet of a workbook that was passed over: it is hidden, blank, or holds no table. */
export type SkippedSheet = { readonly sheet: string; readonly why: "hidden" | "blank" | "no-table" };
export type WorkbookRead = {
  readonly sheets: readonly Sheet[];
  readonly findings: readonly Finding[];
  readonly skipped: readonly SkippedSheet[];
};
export type NamedRead = SheetRead & { readonly name: string };

const fewestKnown = 2;
/** What refuses a whole file of text, and of a workbook says that a sheet is no table. */
const noTable: ReadonlySet<string> = new Set(["no-header", "header-only"]);

/**
 * The sheets of a workbook that are tables of cases: those with at least two headers known here, or, where no sheet has them, all with a
 * row of headers. The others are passed over; where none is left the first one's reason refuses the file.
 */
export function chooseSheets(file: string, read: readonly NamedRead[], blank: readonly SkippedSheet[]): WorkbookRead {
  const known = read.filter(({ sheet }) => sheet !== null && recognised(sheet.headerCells) >= fewestKnown);
  const tables = known.length > 0 ? known : read.filter(({ sheet }) => sheet !== null);
  const broken = read.filter(({ sheet, findings }) => sheet === null && !findings.every(({ code }) => noTable.has(code)));
  const taken = new Set([...tables, ...broken]);
  const skipped = [...blank, ...read.filter((each) => !taken.has(each)).map(({ name }) => ({ sheet: name, why: "no-table" }) as const)];
  const findings = [...taken].flatMap((each) => each.findings);
  if (taken.size > 0) return { sheets: [...tables].flatMap(({ sheet }) => (sheet ? [sheet] : [])), findings, skipped };
  const first = read[0]?.findings ?? [finding("empty-file", { file }, "a workbook whose sheets are blank")];
  return { sheets: [], findings: first.map((each) => ({ ...each, file })), skipped };
}
