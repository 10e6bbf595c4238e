import { detectInCell, type Suspicion, type SuspicionKind } from "../detect";
import { describe } from "../values/describe";
import { type CellRead, type Fact, unread } from "./cell-read";

/** What may be wrong with a cell, its column known. */
export type Suspect = (cell: string) => readonly Suspicion[];

/** A cell looked at by itself. */
export const alone: Suspect = (cell) => detectInCell(cell, { coded: true });

/** Kinds that ordinary words and dates of a log resemble: alone they only warn. */
const likeOrdinaryWords: ReadonlySet<SuspicionKind> = new Set(["name", "date", "month-and-year", "long-number", "record-number"]);

/**
 * What to say of a cell that no reader of its column understands: an identifier sets the row aside; whatever else it may be, a suspicion is
 * said beside it. The cell wasn't understood, so a telephone number or postcode by its form alone is enough.
 */
export function notUnderstood(cell: string, read: CellRead, suspect: Suspect): CellRead {
  const found = suspect(cell).filter(({ kind }) => kind !== "free-text");
  const identifiers = found.filter(({ level, kind }) => level === "block" || !likeOrdinaryWords.has(kind));
  if (identifiers.length > 0) return unread("identifier-in-cell", describe(cell), { kind: kindWords(identifiers) });
  return found.length === 0 ? read : { ...read, facts: [...read.facts, suspected(cell, found)] };
}

/** The finding of a cell that is kept, or aside for another reason, and may hold an identifier. */
export function suspected(cell: string, found: readonly Suspicion[]): Fact {
  return { code: "identifier-suspected", found: describe(cell), about: { kind: kindWords(found) } };
}

/** Kinds in words of ours. @example kindWords([{ kind: "nhs-number", score: 3, level: "block" }]) // => "nhs number" */
export function kindWords(found: readonly Suspicion[]): string {
  return found.map(({ kind }) => kind.replaceAll("-", " ")).join(", ");
}
