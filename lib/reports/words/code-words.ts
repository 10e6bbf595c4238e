import { wordsOfCode } from "@/lib/answers";

/** A class of a scheme as it is printed: roman numerals as numerals, words as words; `iiia` → `IIIa`. */
export function classWords(code: string): string {
  const roman = /^(i{1,3}|iv|v)([abc]?)$/.exec(code);
  return roman ? `${roman[1]?.toUpperCase()}${roman[2]}` : wordsOfCode(code);
}

/** `death of …` → `Death of …`. */
export function upperFirst(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
