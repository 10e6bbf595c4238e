import { unguardCell } from "../csv/guard-cell";
import type { Sheet } from "../types";
import type { Record } from "./records";

export type Shaped = {
  readonly headerCells: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly rowNumbers: readonly number[];
  readonly ragged: Sheet["ragged"];
};

/** Rows as wide as the headers. Blank cells past the last header, and blank columns at the end, are taken off. */
export function shapeRows(head: readonly string[], records: readonly Record[]): Shaped {
  const width = lastFilled(head);
  const beyond = records.reduce((most, { cells }) => (cells.length === head.length ? Math.max(most, lastFilled(cells)) : most), width);
  const columns = Math.max(width, beyond);
  const rows: (readonly string[])[] = [];
  const rowNumbers: number[] = [];
  const ragged: { row: number; cells: readonly string[] }[] = [];
  for (const { cells, line } of records) {
    if (cells.length < columns || lastFilled(cells) > columns) ragged.push({ row: line, cells });
    else {
      rows.push(plainCells(cells.length === columns ? cells : cells.slice(0, columns)));
      rowNumbers.push(line);
    }
  }
  const headerCells = [...head.slice(0, columns), ...Array<string>(Math.max(0, columns - head.length)).fill("")];
  return { headerCells: headerCells.map((cell) => unguardCell(cell)), rows, rowNumbers, ragged };
}

/** Cells made plain where they stand: a copy of each row would hold a long file twice. */
function plainCells(cells: string[]): readonly string[] {
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i] as string;
    const plain = plainCell(cell);
    if (plain !== cell) cells[i] = plain;
  }
  return cells;
}

/** A cell without the marks that keep a spreadsheet from changing it: an apostrophe before it, or `="…"` around it. */
function plainCell(cell: string): string {
  const text = cell.trim();
  const kept = text.startsWith('="') ? /^="([^"]*)"$/.exec(text)?.[1] : undefined;
  return kept?.trim() ?? unguardCell(text);
}

function lastFilled(cells: readonly string[]): number {
  for (let i = cells.length; i > 0; i--) if ((cells[i - 1] as string).trim() !== "") return i;
  return 0;
}
