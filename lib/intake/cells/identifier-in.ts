import { detectInCell, type SuspicionKind } from "../detect";

/** Kinds that ordinary words and dates of a log resemble: alone they only warn. */
const likeOrdinaryWords: ReadonlySet<SuspicionKind> = new Set([
  "name",
  "date",
  "month-and-year",
  "long-number",
  "record-number",
  "free-text",
]);

/**
 * The kinds of identifier that a cell of codes, flags or numbers holds, in words of ours; `null` when none is. The cell wasn't understood, so
 * a telephone number or postcode by its form alone is enough.
 */
export function identifierIn(cell: string): string | null {
  const found = detectInCell(cell, { coded: true }).filter(
    ({ level, kind }) => kind !== "free-text" && (level === "block" || !likeOrdinaryWords.has(kind)),
  );
  return found.length === 0 ? null : found.map(({ kind }) => kind.replaceAll("-", " ")).join(", ");
}

/** The kinds that a cell may hold, in words of ours; `null` when nothing in it looks like one. */
export function suspectedIn(cell: string): string | null {
  const kinds = detectInCell(cell, { coded: true }).map(({ kind }) => kind.replaceAll("-", " "));
  return kinds.length === 0 ? null : kinds.join(", ");
}
