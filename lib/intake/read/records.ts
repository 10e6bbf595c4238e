import papa from "papaparse/papaparse.min.js";
import type { Delimiter } from "../types";

/** A record of the file and the line on which it begins, 1 = first line. */
export type Record = { readonly cells: string[]; readonly line: number };
export type Records = { readonly records: readonly Record[]; readonly unclosedQuoteAt: number | null };

const lineBreak = /\r\n|\n|\r/g;

/** Records of a delimited text (RFC 4180), blank ones left out, with their lines: a quoted cell may run over several. */
export function parseRecords(text: string, delimiter: Delimiter, firstLine: number): Records {
  // one line end for the whole file: a file that mixes CRLF and LF would else lose its rows; the CR left over is taken off below
  const newline = text.includes("\n") ? "\n" : "\r";
  const options = { delimiter, newline, header: false, dynamicTyping: false, skipEmptyLines: false, quoteChar: '"' } as const;
  const { data, errors } = papa.parse(text, options);
  const badQuotes = errors.filter((error) => error.type === "Quotes").map((error) => error.row ?? 0);
  const firstBad = badQuotes.length > 0 ? Math.min(...badQuotes) : null;
  const records: Record[] = [];
  let unclosedQuoteAt: number | null = null;
  let line = firstLine;
  for (const [i, cells] of data.entries()) {
    if (i === firstBad) unclosedQuoteAt = line;
    takeOffCarriageReturn(cells);
    if (cells.some((cell) => cell.trim() !== "")) records.push({ cells, line });
    line += 1 + breaksIn(cells);
  }
  return { records, unclosedQuoteAt: firstBad !== null ? (unclosedQuoteAt ?? line) : null };
}

function takeOffCarriageReturn(cells: string[]): void {
  const last = cells.at(-1);
  if (last?.endsWith("\r")) cells[cells.length - 1] = last.slice(0, -1);
}

function breaksIn(cells: readonly string[]): number {
  let breaks = 0;
  for (const cell of cells) {
    if (cell.includes("\n") || cell.includes("\r")) breaks += cell.match(lineBreak)?.length ?? 0;
  }
  return breaks;
}
