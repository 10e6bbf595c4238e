import { fold } from "@/lib/codebook";
import { eponyms } from "./eponyms";
import { vocabulary } from "./vocabulary";

/** Whether a word can't be told from vocabulary: known, an eponym, or a form of a known word. */
export function isOrdinary(word: string): boolean {
  return fold(word).split(" ").every(isOrdinaryPart);
}

function isOrdinaryPart(folded: string): boolean {
  if (folded.length < 2 || vocabulary.has(folded) || eponyms.has(folded)) return true;
  const stem = folded.replace(/(?:ies|es|s|ed|ing|ly|al)$/, "");
  return stem.length > 2 && stem !== folded && (vocabulary.has(stem) || vocabulary.has(`${stem}e`) || vocabulary.has(`${stem}y`));
}

const notAfterTitle = new Set("and no not number name letter list notes said advised reviewed agreed scan".split(" "));

/** Whether a word is no name even after a title: a person may be called Turner, or Green. */
export function isOrdinaryAfterTitle(word: string): boolean {
  return notAfterTitle.has(fold(word));
}

/** The same after letters that mean something else too: *MR* is a way of imaging, *MS* a disease, *mr* starts no sentence. */
export function isOrdinaryAfterDoubtfulTitle(word: string): boolean {
  const folded = fold(word);
  return vocabulary.has(folded) || (isOrdinaryPart(folded) && !eponyms.has(folded));
}

const shortestKnown = 4;

/**
 * Names and numbers that a file itself shows to be of persons (its name columns, which are dropped, its local ids): looked for in every
 * other cell. Words shorter than four characters and ordinary words are left out: they would stand in half of all notes.
 */
export function knownWordsOf(cells: Iterable<string>): ReadonlySet<string> {
  const known = new Set<string>();
  for (const cell of cells)
    for (const word of fold(cell).split(" ")) if (word.length >= shortestKnown && !isOrdinary(word)) known.add(word);
  return known;
}
