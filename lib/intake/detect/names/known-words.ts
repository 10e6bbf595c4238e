import { fold } from "@/lib/codebook";
import type { Hit } from "../suspicion";
import { isOrdinary } from "../words/person-words";

const shortestWord = 4;
const shortestNumber = 5;

/**
 * Names and numbers that a file itself shows to be of persons (its name columns, which are dropped, its local ids): looked for in every
 * other cell. Words shorter than four characters, numbers shorter than five and ordinary words are left out: they would stand in half of all
 * notes. A number counts with and without its leading zeros, which a spreadsheet takes off.
 * @example [...knownWordsOf(["Zedson, Mr", "004711"])] // => ["zedson", "004711"]
 */
export function knownWordsOf(cells: Iterable<string>): ReadonlySet<string> {
  const known = new Set<string>();
  for (const cell of cells) for (const word of fold(cell).split(" ")) addWord(known, word);
  return known;
}

function addWord(known: Set<string>, word: string): void {
  if (/^\d+$/.test(word)) {
    for (const digits of [word, word.replace(/^0+/, "")]) if (digits.length >= shortestNumber) known.add(digits);
  } else if (word.length >= shortestWord && !isOrdinary(word)) known.add(word);
}

/** Known names and numbers in a text. */
export function findKnown(text: string, known: ReadonlySet<string>): readonly Hit[] {
  if (known.size === 0) return [];
  const words = fold(text)
    .split(" ")
    .filter((word) => known.has(word));
  return words.map((word) => ({ kind: /\d/.test(word) ? "record-number" : "name", announced: true }));
}
