import { cleanText } from "./clean";
import { type ColumnContext, headerAnnounces, hitsIn, scored } from "./detect-in-cell";
import { looksLikeRecordNumbers } from "./record-numbers";
import { isShortNumber } from "./short-number";
import type { Hit, Suspicion, SuspicionKind } from "./suspicion";

/** Suspicious cells of a column: `at` is the place among the cells given. */
export type SuspiciousCell = { readonly at: number; readonly suspicions: readonly Suspicion[] };

/** A column's detector, its header read once. */
export type ColumnDetector = {
  /** Suspicions about one cell, by itself. */
  cell(text: string): readonly Suspicion[];
  /** Suspicious cells of the whole column; a kind found in half of its filled cells counts two points more in each. */
  column(cells: readonly string[]): readonly SuspiciousCell[];
};

const nothing: readonly Hit[] = [];
const mostRemembered = 20_000;

/** Compiles a detector: plain numbers of a column whose header announces nothing never reach a pattern; equal cells are looked at once. */
export function makeColumnDetector(context: ColumnContext = {}): ColumnDetector {
  const header = headerAnnounces(context);
  const saysOfNumbers = header.number || header.date || header.postcode;
  const remembered = new Map<string, readonly Hit[]>();
  const look = (text: string): readonly Hit[] => {
    if (!saysOfNumbers && isShortNumber(text)) return nothing;
    const held = remembered.get(text);
    if (held !== undefined) return held;
    const hits = hitsIn(text, header, context);
    if (remembered.size < mostRemembered) remembered.set(text, hits);
    return hits;
  };
  return { cell: (text) => scored(look(text)), column: (cells) => suspiciousCells(cells, look) };
}

/** Suspicious cells of a column. @example detectInColumn(["12", "a.b@example.org"]).length // => 1 */
export function detectInColumn(cells: readonly string[], context: ColumnContext = {}): readonly SuspiciousCell[] {
  return makeColumnDetector(context).column(cells);
}

function suspiciousCells(cells: readonly string[], look: (text: string) => readonly Hit[]): readonly SuspiciousCell[] {
  const hits = cells.map(look);
  const frequent = kindsInHalf(cells, hits);
  const recordNumbers = looksLikeRecordNumbers(cells);
  return hits.flatMap((found, at) => {
    if (found.length === 0 && !(recordNumbers && isFilled(cells[at]))) return [];
    const all: readonly Hit[] = found.length > 0 ? found : [{ kind: "record-number" }];
    return [{ at, suspicions: scored(all, ({ kind }) => frequent.has(kind)) }];
  });
}

/**
 * Kinds found in at least half of the filled cells, of at least two. Names must differ from row to row: a make or place that many rows
 * share is no patient's name.
 */
function kindsInHalf(cells: readonly string[], hits: readonly (readonly Hit[])[]): ReadonlySet<SuspicionKind> {
  const filled = cells.filter(isFilled).length;
  const rows = new Map<SuspicionKind, number>();
  const names = new Set<string>();
  hits.forEach((found, at) => {
    for (const kind of new Set(found.map((hit) => hit.kind))) rows.set(kind, (rows.get(kind) ?? 0) + 1);
    if (found.some(({ kind }) => kind === "name")) names.add(cleanText(cells[at] ?? "").toLowerCase());
  });
  if (rows.has("name")) rows.set("name", names.size);
  return new Set([...rows].filter(([, n]) => n >= 2 && n * 2 >= filled).map(([kind]) => kind));
}

function isFilled(cell: string | undefined): boolean {
  return cell !== undefined && cell.trim() !== "";
}
