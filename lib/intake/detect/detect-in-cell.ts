import { fold } from "@/lib/codebook";
import { type Announced, announcedBy, eitherAnnounced, nothingAnnounced } from "./announced";
import { cleanText, longestCell } from "./clean";
import { findElectronic } from "./contact/electronic";
import { findPhones } from "./contact/phone";
import { findPostcodes } from "./contact/postcode";
import { findDates } from "./find-dates";
import { findNames } from "./names/find-names";
import { findKnown } from "./names/known-words";
import { findNumbers } from "./numbers/find-numbers";
import { type Hit, type Suspicion, suspicionOf } from "./suspicion";

/** What is known of the column in which a cell stands. */
export type ColumnContext = {
  readonly header?: string;
  /** Cells are codes, flags or numbers: a sentence among them is free text. */
  readonly coded?: boolean;
  /** Words that the file itself shows to be names or numbers of persons (`knownWordsOf`). */
  readonly known?: ReadonlySet<string>;
};

const mostWordsOfACode = 8;
const nobody: ReadonlySet<string> = new Set();

/** What a clean cell holds, unscored; strongest evidence kept where a kind is found twice. */
export function hitsIn(cell: string, header: Announced, { coded = false, known = nobody }: ColumnContext = {}): readonly Hit[] {
  const text = cleanText(cell);
  if (text === "") return [];
  const announced = eitherAnnounced(header, announcedBy(fold(text)));
  const dates = findDates(text, announced);
  const contacts = [...findElectronic(text, announced), ...findPhones(text, announced), ...findPostcodes(text, announced)];
  const found = findNumbers(text, announced).filter((hit) => !isExplained(hit, [...dates, ...contacts]));
  const free: Hit[] =
    cell.length > longestCell || (coded && text.split(" ").length > mostWordsOfACode) ? [{ kind: "free-text", proof: true }] : [];
  const hits = [...found, ...contacts, ...dates, ...findNames(text, header), ...findKnown(text, known), ...free];
  return header.device ? hits.map(withoutLoneProof) : hits;
}

// the digits of a date, telephone number or address are no number besides, unless a check digit holds
function isExplained(hit: Hit, by: readonly Hit[]): boolean {
  return (hit.kind === "long-number" || (hit.kind === "record-number" && by.some(({ announced }) => announced))) && by.length > 0;
}

// a serial number passes a check digit one time in ten
function withoutLoneProof(hit: Hit): Hit {
  return hit.proof && !hit.announced && /-|record/.test(hit.kind) ? { ...hit, shapeOnly: true } : hit;
}

/**
 * Suspicions about one cell, strongest first. The value is in none of them.
 * @example detectInCell("NHS no 943 476 5870").map(({ kind, level }) => `${kind} ${level}`) // => ["nhs-number block"]
 */
export function detectInCell(cell: string, column: ColumnContext = {}): readonly Suspicion[] {
  return scored(hitsIn(cell, headerAnnounces(column), column));
}

/** What the header of a column announces. */
export function headerAnnounces({ header }: ColumnContext): Announced {
  return header === undefined ? nothingAnnounced : announcedBy(fold(header));
}

/** Scored, one a kind, strongest first. */
export function scored(hits: readonly Hit[], inHalfOfColumn: (hit: Hit) => boolean = () => false): readonly Suspicion[] {
  const best = new Map<string, Suspicion>();
  for (const hit of hits) {
    const suspicion = suspicionOf(hit, inHalfOfColumn(hit));
    if (suspicion.score > (best.get(hit.kind)?.score ?? 0)) best.set(hit.kind, suspicion);
  }
  return [...best.values()].sort((a, b) => b.score - a.score);
}
