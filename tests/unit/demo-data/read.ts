import { readFileSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";
import readWorkbook from "read-excel-file/node";

export const folder = join(import.meta.dirname, "../../../demo-data");
export type Row = Readonly<Record<string, string>>;

export const bytesOf = (name: string) => readFileSync(join(folder, name));
export const jsonOf = (name: string): unknown => JSON.parse(bytesOf(name).toString("utf8"));

/** Windows-1252 agrees with Latin 1 in every character of these files but the dashes of the title, which no test reads. */
export function recordsOf(name: string, encoding: "utf8" | "latin1", delimiter: "," | ";"): readonly (readonly string[])[] {
  const text = bytesOf(name)
    .toString(encoding)
    .replace(/^\uFEFF/, "");
  return Papa.parse<string[]>(text, { delimiter, skipEmptyLines: true }).data;
}

export function rowsOf(name: string): readonly Row[] {
  const [headers = [], ...rows] = recordsOf(name, "utf8", ",");
  return rows.map((row) => Object.fromEntries(headers.map((header, index) => [header, row[index] ?? ""])));
}

const millisecondsPerDay = 86_400_000;
export const dayOf = (iso: string) => Date.parse(`${iso}T00:00:00Z`) / millisecondsPerDay;

export function groupedBy<T>(values: readonly T[], nameOf: (value: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const value of values) groups.set(nameOf(value), [...(groups.get(nameOf(value)) ?? []), value]);
  return groups;
}

export type Fault = {
  readonly file: string;
  readonly sheet?: string;
  readonly row: number;
  readonly column: string | null;
  readonly code: string;
  readonly typed: string | null;
  readonly mended: string | null;
  readonly mend: string;
};

/** The two files with a title have their headers in line 2. */
export const headerLineOf = (file: string) => (file.startsWith("raw-one-sheet") || file.startsWith("raw-workbook") ? 2 : 1);

/** The first sheet of a raw file as text, whatever its form. */
export async function sheetOf(file: string): Promise<readonly (readonly string[])[]> {
  if (!file.endsWith(".xlsx"))
    return recordsOf(file, file.includes("one-sheet") ? "latin1" : "utf8", file.includes("one-sheet") ? ";" : ",");
  const [first] = await readWorkbook(bytesOf(file));
  if (!first) throw new RangeError(`sheetOf requires a workbook with a sheet, received ${file}`);
  return first.data.map((row) => row.map((cell) => (cell instanceof Date ? cell.toISOString().slice(0, 10) : String(cell ?? ""))));
}
