/** `gainMm` → `gain_mm`: the SQL column and the template header of a field. */
export function snake(id: string): string {
  return id.replace(/([a-z0-9])([A-Z])/g, "$1_$2").toLowerCase();
}

/** `gain_mm` → `gainMm`. */
export function camel(column: string): string {
  return column.replace(/_([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
}

/**
 * The form in which headers and values are compared: lower case, accents and punctuation folded, runs of blanks to one.
 * @example fold("  Fémur – LEFT_side ") // => "femur left side"
 */
export function fold(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}+]+/gu, " ")
    .trim();
}

/** Words that keep their hyphen. */
const compounds = /\b(post|anti|follow|toe|limb)-(traumatic|infective|inflammatory|up|touch|length)\b|-/g;

/**
 * A code as words within a sentence.
 * @example wordsOfCode("not-looked-for") // => "not looked for"
 * @example wordsOfCode("post-traumatic") // => "post-traumatic"
 */
export function wordsOfCode(code: string): string {
  return code.replace(compounds, (found) => (found === "-" ? " " : found));
}

/**
 * A code as words. Codes that need another label say so where they are declared.
 * @example labelOfCode("magnetic-nail") // => "Magnetic nail"
 */
export function labelOfCode(code: string): string {
  const words = wordsOfCode(code);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The id of an index of the unit's own; what it is stands in the unit's settings. */
export const ownIndexId = /^own-[a-z0-9][a-z0-9-]{0,26}$/;
