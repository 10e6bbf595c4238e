import { readFileSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";

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
