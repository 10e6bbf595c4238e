import { fold } from "@/lib/codebook";
import { knownWordsOf } from "../detect";
import { announcedBy } from "../detect/announced";
import type { ColumnMatch, SheetMatch } from "../match/column-match";
import type { Sheet } from "../types";
import { tallyOf } from "./column-cells";

type Matched = { readonly sheet: Sheet; readonly match: SheetMatch };

/**
 * Names and numbers that the files themselves show to be of persons: their local ids, surgeons and dropped columns of names and numbers.
 * Looked for in every other cell, header and file name, of all files at once. Gathered when first asked for.
 */
export function knownPersons(sheets: readonly Matched[]): () => ReadonlySet<string> {
  let known: ReadonlySet<string> | null = null;
  return () => {
    known ??= knownWordsOf(cellsOfPersons(sheets));
    return known;
  };
}

function* cellsOfPersons(sheets: readonly Matched[]): Iterable<string> {
  for (const { sheet, match } of sheets)
    for (const column of match.columns) if (namesPersons(column)) yield* tallyOf(sheet, column.index).keys();
}

function namesPersons({ target, dropped, header }: ColumnMatch): boolean {
  if (target) return target.field === "localId" || target.field === "surgeonName";
  if (dropped === null || dropped === "comments" || dropped === "typed-index") return false;
  const words = fold(header);
  const { name, number } = announcedBy(words);
  return name || number || words === "referring doctor";
}
