import type { Announced } from "../announced";
import type { Hit } from "../suspicion";
import { isOrdinary } from "../words/person-words";
import { namePatterns } from "./patterns";

/**
 * Names in a clean text, without a list of names: forms in which names stand; any word that is not vocabulary under a header that announces names. Rules miss names: free text is dropped, not cleaned.
 */
export function findNames(text: string, announced: Announced): readonly Hit[] {
  if (!/\p{L}{2}/u.test(text)) return [];
  const forms = namePatterns.filter(({ form, isNoName }) => standsIn(text, form, isNoName));
  if (forms.some((pattern) => pattern.announced)) return [{ kind: "name", announced: true }];
  if (announced.name && (text.match(/\p{L}{2,40}/gu) ?? []).some((word) => !isOrdinary(word))) return [{ kind: "name", announced: true }];
  return forms.length > 0 || isAllNames(text) ? [{ kind: "name" }] : [];
}

function standsIn(text: string, form: RegExp, isNoName: (word: string) => boolean): boolean {
  for (const found of text.matchAll(form)) if (!isNoName(found.at(-1) ?? "")) return true;
  return false;
}

// the whole cell: two to four words with capitals, none of them vocabulary, none an abbreviation
const capitalised = /^\p{Lu}[\p{L}'’-]{1,40}$/u;
const abbreviation = /^\p{Lu}{1,4}$/u;
function isAllNames(text: string): boolean {
  if (text.length > 80) return false;
  const words = text.split(/[ ,]+/).filter((word) => !/^\p{Lu}\.?$/u.test(word));
  return (
    words.length >= 2 && words.length <= 4 && words.every((word) => capitalised.test(word) && !abbreviation.test(word) && !isOrdinary(word))
  );
}
