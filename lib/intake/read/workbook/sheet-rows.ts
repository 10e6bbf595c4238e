import type { Record } from "../records";
import { type CellRules, cellText } from "./cell-text";
import { piecesOf } from "./pieces";
import { textOfRuns } from "./strings";
import { attribute, walkXml } from "./xml";

type Row = { readonly line: number; readonly cells: string[] };

/** Rows of a sheet that hold something, with the numbers by which the spreadsheet shows them, some at a time. @throws BrokenMarkup */
export function* sheetRows(part: Uint8Array, rules: CellRules): Generator<readonly Record[]> {
  const pieces = piecesOf(part, "row");
  const kept: Row[] = [];
  let last = 0;
  for (const piece of pieces.elements) {
    const rows = rowsIn(piece, last, rules);
    last = rows.at(-1)?.line ?? last;
    const filled = rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
    kept.push(...filled);
    yield filled;
  }
  blankCovered(kept, pieces.tail());
}

function rowsIn(piece: string, before: number, rules: CellRules): readonly Row[] {
  const rows: Row[] = [];
  let line = before;
  let cells: string[] = [];
  let cell = { column: 0, type: "", style: 0 };
  let value = "";
  let inValue = false;
  const inline = textOfRuns();
  walkXml(`<d>${piece}</d>`, {
    open: (name, attributes) => {
      if (name === "row") {
        line = Number(attribute(attributes(), "r") ?? line + 1);
        cells = [];
      } else if (name === "c") {
        cell = cellOf(attributes(), cells.length);
        value = "";
        inline.start();
      } else if (name === "v") inValue = true;
      else inline.open(name);
    },
    text: (text) => {
      if (inValue) value += text;
      else inline.add(text);
    },
    close: (name) => {
      if (name === "v") inValue = false;
      else if (name === "c")
        put(cells, cell.column, cellText({ type: cell.type, style: cell.style, value, inline: inline.taken() }, rules));
      else if (name === "row") rows.push({ line, cells });
      else inline.close(name);
    },
  });
  return rows;
}

function cellOf({ r, t = "n", s }: Readonly<{ [name: string]: string }> & { r?: string; t?: string; s?: string }, next: number) {
  return { column: r === undefined ? next : columnOf(r), type: t, style: s === undefined ? 0 : Number(s) };
}

const mostColumns = 16_384;

function put(cells: string[], column: number, text: string): void {
  if (text === "" || column >= mostColumns) return;
  while (cells.length < column) cells.push("");
  cells[column] = text;
}

/** The place of a cell in its row. @example columnOf("AB12") // => 27 */
export function columnOf(reference: string): number {
  let column = 0;
  for (let i = 0; i < reference.length; i++) {
    const letter = reference.charCodeAt(i) & ~0x20;
    if (letter < 65 || letter > 90) break;
    column = column * 26 + letter - 64;
  }
  return column - 1;
}

/** Of merged cells the first holds the value; what some programs leave in the others isn't shown by a spreadsheet, and isn't read. */
function blankCovered(rows: readonly Row[], tail: string): void {
  const byLine = new Map(rows.map((row) => [row.line, row.cells]));
  const lastLine = rows.at(-1)?.line ?? 0;
  for (const [, from = "", to = ""] of tail.matchAll(/<(?:\w+:)?mergeCell\s[^>]*?ref="([A-Z]+\d+):([A-Z]+\d+)"/g)) {
    const [top, bottom] = [lineOf(from), lineOf(to)];
    const [left, right] = [columnOf(from), columnOf(to)];
    for (let line = top; line <= Math.min(bottom, lastLine); line++) {
      const cells = byLine.get(line) ?? [];
      for (let at = left; at <= right && at < cells.length; at++) if (line !== top || at !== left) cells[at] = "";
    }
  }
}

function lineOf(reference: string): number {
  return Number(reference.replace(/^[A-Z]+/, ""));
}
