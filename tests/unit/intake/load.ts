import {
  emptyMapping,
  type Finding,
  keyRing,
  type Mapping,
  type PrepareOptions,
  prepare,
  readSheet,
  type Sheet,
  unitKeyOf,
} from "@/lib/intake";
import { utf8 } from "./bytes";

export const ring = keyRing(unitKeyOf(new Uint8Array(32).fill(7)));
export const today = { year: 2026, month: 11, day: 25 } as const;

/** A sheet of a text. */
export function sheetOf(text: string, file = "log.csv"): Sheet {
  const { sheet, findings } = readSheet(utf8(text), { file });
  if (!sheet) throw new Error(`sheetOf requires a table, received one refused for ${findings.map(({ code }) => code).join(", ")}`);
  return sheet;
}

/** A text as prepared. */
export function load(
  text: string | readonly string[],
  { mapping = {}, ...options }: Partial<Omit<PrepareOptions, "mapping">> & { mapping?: Partial<Mapping> } = {},
) {
  const texts = typeof text === "string" ? [text] : text;
  const sheets = texts.map((each, i) => sheetOf(each, i === 0 ? "log.csv" : `log-${i + 1}.csv`));
  return prepare({ sheets, ring, today, ...options, mapping: { ...emptyMapping, ...mapping } });
}

export function saidOf(findings: readonly Finding[], severities: readonly string[] = ["error", "ask", "warn"]): string[] {
  return findings
    .filter(({ severity }) => severities.includes(severity))
    .map(({ code, row, column }) => [code, row, column].filter((part) => part !== null).join(" "));
}

/** A one-sheet file: one header a line, then a row of values each. */
export function table(columns: Readonly<Record<string, string | readonly string[]>>): string {
  const headers = Object.keys(columns);
  const values = headers.map((header) => columns[header] as string | readonly string[]);
  const rows = Math.max(...values.map((value) => (typeof value === "string" ? 1 : value.length)));
  const quoted = (cell: string) => (/[",\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
  const cellsOf = (i: number) => values.map((value) => quoted(typeof value === "string" ? value : (value[i] ?? ""))).join(",");
  return [headers.map(quoted).join(","), ...Array.from({ length: rows }, (_, i) => cellsOf(i))].join("\n");
}

/** The least that a row of segments needs, with what a test adds. */
export function oneRow(more: Readonly<Record<string, string>> = {}): string {
  return table({ "Hospital No": "A001", Bone: "Femur", Side: "L", "Date of surgery": "14/02/2023", ...more });
}
