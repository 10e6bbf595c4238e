import { matchSheet, normaliseLocalId, readSheet, targetId } from "@/lib/intake";

/** Numbers typed or pasted: a line each, or parted by commas, semicolons or tabs. Blanks within a number stay. */
export function numbersTyped(text: string): readonly string[] {
  return text.split(/[\n\r,;\t]+/);
}

export type NumbersRead = { readonly numbers: readonly string[]; readonly from: string } | { readonly trouble: string };

/** The numbers of the unit's own list: the column whose header means a local number, else the first. */
export function numbersOfFile(bytes: Uint8Array, file: string): NumbersRead {
  const plain = linesOf(bytes);
  if (plain) return { numbers: plain, from: "the file’s lines" };
  const { sheet } = readSheet(bytes, { file });
  if (!sheet) return { trouble: "This file could not be read as a table of text. Save the list as .csv, a number a line." };
  const column = matchSheet(sheet).columns.find(({ target }) => target !== null && targetId(target) === "localId")?.header ?? null;
  const place = column === null ? 0 : sheet.headers.indexOf(column);
  const cells = sheet.rows.map((row) => row[place] ?? "");
  // without a header that says so, the first line may be a number like the others
  const numbers = column === null ? [sheet.headerCells[0] ?? "", ...cells] : cells;
  return { numbers, from: column === null ? "the first column" : "the column of local numbers" };
}

/** A list without columns: one short cell a line. */
function linesOf(bytes: Uint8Array): readonly string[] | null {
  const text = new TextDecoder().decode(bytes);
  // a workbook or another encoding is not a list of lines
  if (text.includes("\0") || text.includes("\uFFFD")) return null;
  const lines = text.replace(/^\uFEFF/, "").split(/\r?\n/);
  return lines.every((line) => line.length <= 60 && !/[,;\t"]/.test(line)) ? lines : null;
}

/** Each number once, as it was first written; what names nobody is left out. */
export function eachOnce(numbers: readonly string[]): ReadonlyMap<string, string> {
  const once = new Map<string, string>();
  for (const written of numbers) {
    const normal = normaliseLocalId(written);
    if (normal !== "" && !once.has(normal)) once.set(normal, written.trim());
  }
  return once;
}
