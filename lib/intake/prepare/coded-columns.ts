import type { Sheet } from "../types";
import { eachRow } from "./pace";

/** A column as its different cells, and which of them stands in each row: a spelling is looked up once, however often it is asked about. */
export type CodedColumn = {
  /** Different cells; the first is the blank one. */
  readonly spellings: string[];
  /** How often each stands. */
  readonly times: number[];
  /** By row: the place of its cell among the spellings. */
  readonly codes: Uint32Array;
  readonly known: Map<string, number>;
  tally: ReadonlyMap<string, number> | null;
};

const coded = new WeakMap<Sheet, Map<number, CodedColumn>>();

function columnsOf(sheet: Sheet): Map<number, CodedColumn> {
  const held = coded.get(sheet) ?? new Map<number, CodedColumn>();
  coded.set(sheet, held);
  return held;
}

function newColumn(rows: number): CodedColumn {
  return { spellings: [""], times: [0], codes: new Uint32Array(rows), known: new Map(), tally: null };
}

function addCell({ spellings, times, codes, known }: CodedColumn, row: number, cell: string): void {
  if (cell === "") return;
  let code = known.get(cell);
  if (code === undefined) {
    code = spellings.push(cell) - 1;
    times.push(0);
    known.set(cell, code);
  }
  codes[row] = code;
  times[code] = (times[code] as number) + 1;
}

/** Codes many columns in one walk over the rows, which lie far apart in memory. */
export async function codeColumns(sheet: Sheet, indices: readonly number[], signal: AbortSignal | null): Promise<void> {
  const made = indices.map((index) => [index, newColumn(sheet.rows.length)] as const);
  const addRow = (cells: readonly string[], row: number) => {
    for (const [index, column] of made) addCell(column, row, cells[index] as string);
  };
  await eachRow(sheet.rows, addRow, { signal });
  const held = columnsOf(sheet);
  for (const [index, column] of made) held.set(index, column);
}

/** A column of a sheet, coded when first asked for. */
export function codedColumn(sheet: Sheet, index: number): CodedColumn {
  const held = columnsOf(sheet);
  const known = held.get(index);
  if (known) return known;
  const made = newColumn(sheet.rows.length);
  for (const [row, cells] of sheet.rows.entries()) addCell(made, row, cells[index] as string);
  held.set(index, made);
  return made;
}

/** Spellings that aren't blank, in the order in which they first stand, and how often each does. */
export function tallyOfCodes(column: CodedColumn): ReadonlyMap<string, number> {
  column.tally ??= new Map(column.spellings.slice(1).map((cell, i) => [cell, column.times[i + 1] as number]));
  return column.tally;
}
