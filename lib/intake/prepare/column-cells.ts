import type { Sheet } from "../types";
import type { Question } from "./question";

const sampleCount = 3;

/** Cells of a column that aren't blank. */
export function* cellsOf(sheet: Sheet, index: number): Generator<string> {
  for (const row of sheet.rows) {
    const cell = row[index] as string;
    if (cell !== "") yield cell;
  }
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
  for (const cell of cellsOf(sheet, index)) {
    all++;
    if (is(cell)) those++;
  }
  return all === 0 ? 0 : those / all;
}

/** The middle one of some numbers; `null` of none. */
export function middleOf(numbers: readonly number[]): number | null {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}
