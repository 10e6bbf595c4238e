import type { Sheet } from "../types";
import { codedColumn, tallyOfCodes } from "./coded-columns";
import type { Question } from "./question";

const sampleCount = 3;

/** Different cells of a column that aren't blank, and how often each stands: a column is judged by them, not row by row. */
export function tallyOf(sheet: Sheet, index: number): ReadonlyMap<string, number> {
  return tallyOfCodes(codedColumn(sheet, index));
}

/** Up to three cells of a column, with their rows: they stay in the tab. */
export function samplesOf(sheet: Sheet, index: number): Question["samples"] {
  const samples: { row: number; cell: string }[] = [];
  for (let i = 0; i < sheet.rows.length && samples.length < sampleCount; i++) {
    const cell = sheet.rows[i]?.[index] ?? "";
    if (cell !== "") samples.push({ row: sheet.rowNumbers[i] as number, cell });
  }
  return samples;
}

/** The share of a column's cells that are something. */
export function share(sheet: Sheet, index: number, is: (cell: string) => boolean): number {
  let all = 0;
  let those = 0;
  for (const [cell, times] of tallyOf(sheet, index)) {
    all += times;
    if (is(cell)) those += times;
  }
  return all === 0 ? 0 : those / all;
}

/** Numbers, each with how often it stands. */
export type Weighted = readonly (readonly [value: number, times: number])[];

/** The middle one of weighted numbers; `null` of none. */
export function middleOf(numbers: Weighted): number | null {
  const sorted = [...numbers].sort(([a], [b]) => a - b);
  const half = sumOf(sorted) / 2;
  let passed = 0;
  for (const [value, times] of sorted) {
    passed += times;
    if (passed > half) return value;
  }
  return sorted.at(-1)?.[0] ?? null;
}

/** How many numbers there are, or how many are something. */
export function sumOf(numbers: Weighted, is: (value: number) => boolean = () => true): number {
  return numbers.reduce((sum, [value, times]) => (is(value) ? sum + times : sum), 0);
}
