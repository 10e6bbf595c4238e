import { textWidth } from "./text-width";

/**
 * Breaks words that are too long for a line, with a hyphen, so that `wrapText` finds blanks to wrap at.
 * @example breakWords("complication", 12, 500) // => "complication"
 */
export function breakWords(text: string, size: number, width: number): string {
  return text
    .split(" ")
    .flatMap((word) => pieces(word, size, width))
    .join(" ");
}

const leastEnding = 6;

function pieces(word: string, size: number, width: number): string[] {
  if (textWidth(word, size) <= width || word.length < 4) return [word];
  let end = word.length - 1;
  while (end > 2 && textWidth(`${word.slice(0, end)}-`, size) > width) end--;
  // no ending of a letter or two alone on the next line
  if (word.length - end < leastEnding) end = Math.max(2, word.length - leastEnding);
  return [`${word.slice(0, end)}-`, ...pieces(word.slice(end), size, width)];
}
