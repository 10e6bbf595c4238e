import type { Delimiter } from "../types";

const candidates: readonly Delimiter[] = [";", "\t", ","];
const quote = 0x22;
const carriageReturn = 0x0d;
const lineFeed = 0x0a;

/** How many of each delimiter stand outside quotes on each line that isn't blank. */
export function delimitersByLine(text: string): readonly (readonly number[])[] {
  const lines: number[][] = [];
  let counts = candidates.map(() => 0);
  let blank = true;
  const endLine = () => {
    if (!blank) lines.push(counts);
    counts = candidates.map(() => 0);
    blank = true;
  };
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    if (unit === lineFeed || unit === carriageReturn) {
      endLine();
      continue;
    }
    const candidate = candidateOf(unit);
    if (candidate >= 0) counts[candidate] = (counts[candidate] as number) + 1;
    else if (unit === quote && opensQuote(text, i)) i = closingQuote(text, i);
    blank = false;
  }
  endLine();
  return lines;
}

/** A quotation mark opens a quoted cell where a cell begins. */
function opensQuote(text: string, at: number): boolean {
  if (at === 0) return true;
  const before = text.charCodeAt(at - 1);
  return before === lineFeed || before === carriageReturn || candidateOf(before) >= 0;
}

/** Place of the mark that closes a quoted cell, doubled ones passed over; the end of the text when none does. */
function closingQuote(text: string, open: number): number {
  for (let at = text.indexOf('"', open + 1); at >= 0; at = text.indexOf('"', at + 2)) {
    if (text.charCodeAt(at + 1) !== quote) return at;
  }
  return text.length;
}

function candidateOf(unit: number): number {
  // letters, and digits, which most of a file is
  if (unit > 0x3b || (unit > 0x2c && unit < 0x3b)) return -1;
  if (unit === 0x3b) return 0;
  if (unit === 0x09) return 1;
  return unit === 0x2c ? 2 : -1;
}

/**
 * The delimiter that stands equally often on most lines, over the whole file: a header may hold commas in a file of semicolons, and so
 * may every number. `null` when no line holds any.
 */
export function sniffDelimiter(text: string): Delimiter | null {
  const lines = delimitersByLine(text);
  let best: { delimiter: Delimiter; score: number } | null = null;
  for (const [i, delimiter] of candidates.entries()) {
    const score = steadiness(lines.map((counts) => counts[i] as number));
    if (score > 0 && (!best || score > best.score * 1.05)) best = { delimiter, score };
  }
  return best?.delimiter ?? null;
}

/** Share of lines that hold the commonest count above zero, with a little for more columns. */
function steadiness(counts: readonly number[]): number {
  const tally = new Map<number, number>();
  for (const count of counts) if (count > 0) tally.set(count, (tally.get(count) ?? 0) + 1);
  let commonest: readonly [count: number, lines: number] = [0, 0];
  for (const entry of tally) if (entry[1] > commonest[1]) commonest = entry;
  const [count, lines] = commonest;
  return lines === 0 ? 0 : (lines / counts.length) * (1 + Math.min(count, 20) / 20);
}
