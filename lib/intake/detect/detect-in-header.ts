import { nothingAnnounced } from "./announced";
import { type ColumnContext, hitsIn, scored } from "./detect-in-cell";
import type { Suspicion, SuspicionKind } from "./suspicion";

/** Words that the file itself shows to be names or numbers of persons. */
type Known = Pick<ColumnContext, "known">;

const dates: ReadonlySet<SuspicionKind> = new Set(["date", "month-and-year", "long-number"]);

/**
 * Suspicions about a header, sheet name or title row: a person's name or number that stands there. What a header announces (*Surgeon*,
 * *MRN*) is no identifier.
 */
export function detectInHeader(header: string, context: Known = {}): readonly Suspicion[] {
  return scored(hitsIn(header, nothingAnnounced, context));
}

/** Suspicions about a file's name. The day on which a list was saved names nobody: dates, and digits without a check, are passed over. */
export function detectInFileName(name: string, context: Known = {}): readonly Suspicion[] {
  const words = name.replace(/\.[A-Za-z0-9]{1,5}$/, "").replaceAll("_", " ");
  return scored(hitsIn(words, nothingAnnounced, context).filter(({ kind, announced }) => announced || !dates.has(kind)));
}
