import { fold } from "@/lib/codebook";

// blanks, dashes, and what can't be seen (zero-width characters, controls: the separator 0x1F among them)
const unwritten = /[\p{White_Space}\p{Dash}\p{Cf}\p{Cc}]/gu;

/**
 * The form in which local ids are compared: NFKC, upper case, without blanks and hyphens; leading zeros stay. Empty where nothing is
 * left: such an id names nobody.
 * @example normaliseLocalId(" ab-00 12 ") // => "AB0012"
 */
export function normaliseLocalId(text: string): string {
  // taken off before and after folding: NFKC makes a blank of some accents that stand alone, and capitals can need composing again
  const folded = text.replace(unwritten, "").normalize("NFKC").replace(unwritten, "").toUpperCase();
  return folded.normalize("NFKC");
}

/** The form in which surgeons' names are compared: case, accents and punctuation don't matter. @example normaliseSurgeonName("Dr. Ägir,  B") // => "dr agir b" */
export function normaliseSurgeonName(text: string): string {
  return fold(text.normalize("NFKC"));
}
