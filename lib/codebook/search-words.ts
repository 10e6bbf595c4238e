import { fieldsOf } from "./codebook";
import { fold, labelOfCode } from "./names";
import { healingStatuses } from "./reasons";

const searchedTables = ["person", "segment"] as const;
const earliestYear = 1970;
const latestYear = 2099;

/** Words of the labels that a search of cases may name: codes, flags, and how a segment stands. */
const labelWords: ReadonlySet<string> = new Set(
  [
    ...healingStatuses.map(labelOfCode),
    ...searchedTables.flatMap((table) => fieldsOf(table).flatMap(([, field]) => (field.kind === "flag" ? [field.label] : []))),
    ...searchedTables.flatMap((table) =>
      fieldsOf(table).flatMap(([, field]) => (field.kind === "code" ? field.codes.map(labelOfCode) : [])),
    ),
  ].flatMap((label) => fold(label).split(" ")),
);

/** The words of a search, each once, in the form in which they are compared. */
export function wordsOfSearch(search: string): readonly string[] {
  return [...new Set(fold(search).split(" "))].filter((word) => word !== "");
}

/**
 * Whether every word of a search can stand in a case: a case's number up to the highest held, a year, a surgeon's code, or the beginning
 * of a word of a label. No name and no local number can, but by chance: such a search would find nothing, and need go nowhere.
 */
export function canBeFound(search: string, highestCase: number): boolean {
  return wordsOfSearch(search).every((word) => {
    if (/^[1-9]\d*$/.test(word)) return Number(word) <= highestCase || (Number(word) >= earliestYear && Number(word) <= latestYear);
    return /^s[1-9]\d?\d?$/.test(word) || [...labelWords].some((label) => label.startsWith(word));
  });
}
