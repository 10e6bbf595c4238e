import { matchSheet, normaliseLocalId, readFile, targetId } from "@/lib/intake";

/** Numbers typed or pasted: a line each, or parted by commas, semicolons or tabs. Blanks within a number stay. */
export function numbersTyped(text: string): readonly string[] {
  return text.split(/[\n\r,;\t]+/);
}

export type NumbersRead = { readonly numbers: readonly string[]; readonly from: string } | { readonly trouble: string };

/** The numbers of the unit's own list, text or workbook: of each sheet the column whose header means a local number, else the first sheet's first. */
export async function numbersOfFile(bytes: Uint8Array, file: string): Promise<NumbersRead> {
  const plain = linesOf(bytes);
  if (plain) return { numbers: plain, from: "the file’s lines" };
  const { sheets } = await readFile(bytes, { file });
  const [first] = sheets;
  if (!first) return { trouble: "This file could not be read as a table. Save the list as .xlsx or .csv, a number a line." };
  const headed = sheets.flatMap((sheet) => {
    const column = matchSheet(sheet).columns.find(({ target }) => target !== null && targetId(target) === "localId");
    return column ? [sheet.rows.map((row) => row[column.index] ?? "")] : [];
  });
  if (headed.length > 0) return { numbers: headed.flat(), from: "the column of local numbers" };
  // without a header that says so, the first line may be a number like the others
  return { numbers: [first.headerCells[0] ?? "", ...first.rows.map((row) => row[0] ?? "")], from: "the first column" };
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
