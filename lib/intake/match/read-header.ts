import { commentHeaders, directIdentifierHeaders, fold, nationalNumberHeaders, typedIndexHeaders } from "@/lib/codebook";
import type { DropReason } from "./drop-reason";
import { type HeaderUnit, headerParts } from "./header-unit";

/** What one header says, read once whatever the kinds of sheet it is looked up in. */
export type HeaderRead = {
  /** The whole header and the header without its unit, folded, each also without its number. */
  readonly spoken: readonly { readonly words: string; readonly counted: Counted | null }[];
  readonly unit: HeaderUnit | null;
  /** Why it is dropped by what it says, whatever else it could mean. */
  readonly dropped: DropReason | null;
};
export type Counted = { readonly words: string; readonly number: number };

const foldAll = (headers: readonly string[]) => new Set(headers.map(fold));
const national = foldAll(nationalNumberHeaders);
const direct = foldAll(directIdentifierHeaders);
const comments = foldAll(commentHeaders);
const indices = foldAll(typedIndexHeaders);

/** @example readHeader("Complication 2 (months)").spoken[1] // => { words: "complication 2", counted: { words: "complication", number: 2 } } */
export function readHeader(header: string): HeaderRead {
  const whole = fold(header);
  const { words, unit } = headerParts(header);
  const spoken = [...new Set([whole, words])].map((said) => ({ words: said, counted: withoutNumber(said) }));
  return { spoken, unit, dropped: dropReasonOf(whole, spoken) };
}

function dropReasonOf(whole: string, spoken: HeaderRead["spoken"]): DropReason | null {
  if (whole === "") return "blank-header";
  const says = (list: ReadonlySet<string>) =>
    spoken.some(({ words, counted }) => list.has(words) || (counted !== null && list.has(counted.words)));
  if (says(national)) return "national-number";
  if (says(direct)) return "direct-identifier";
  if (says(comments)) return "comments";
  return says(indices) ? "typed-index" : null;
}

/** @example withoutNumber("complication 2 date") // => { words: "complication date", number: 2 } */
export function withoutNumber(words: string): Counted | null {
  if (!/\d/.test(words)) return null;
  const numbers = [...words.matchAll(/(?<![\p{N}])(\d{1,2})(?:st|nd|rd|th)?(?![\p{L}\p{N}])/gu)];
  const only = numbers[0];
  if (!only || numbers.length !== 1 || Number(only[1]) < 1) return null;
  const rest = `${words.slice(0, only.index)} ${words.slice(only.index + only[0].length)}`;
  return { words: rest.replace(/ +/g, " ").trim(), number: Number(only[1]) };
}
