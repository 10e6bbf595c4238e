import type { Delimiter } from "../types";

/** A first line `sep=;`, which spreadsheets write and read, and the text after it. */
export function takeSepLine(text: string): { delimiter: Delimiter | null; rest: string; lines: number } {
  const match = /^"?sep=([,;\t])"?[^\S\r\n]*(\r\n|\n|\r|$)/i.exec(text);
  if (!match) return { delimiter: null, rest: text, lines: 0 };
  return { delimiter: match[1] as Delimiter, rest: text.slice(match[0].length), lines: 1 };
}
