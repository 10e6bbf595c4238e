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
