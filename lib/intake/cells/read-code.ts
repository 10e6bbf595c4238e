import { type CodeField, fold, labelOfCode, noEventValues } from "@/lib/codebook";
import { describe } from "../values/describe";
import { isLostToDate } from "../values/number";
import { type CellRead, type ReadCell, readAs, unread } from "./cell-read";
import { alone, notUnderstood, type Suspect } from "./not-understood";

/** The person's own spellings of a field's codes; an empty code means *not recorded*. */
export type Spellings = Readonly<Record<string, string>>;

const longestWords = 6;
const longestCharacters = 60;
const notRecorded = new Set(["", "nk", "not known", "not recorded", "n k"]);

/** Codes, their labels and the spellings of the codebook, folded. */
export function spellingsOf(field: CodeField): ReadonlyMap<string, string> {
  const own = field.codes.flatMap((code) => [code, labelOfCode(code)].map((text) => [fold(text), code] as const));
  const listed = Object.entries(field.values ?? {}).map(([text, code]) => [fold(text), code] as const);
  return new Map([...listed, ...own]);
}

export function choicesOf(field: CodeField): string {
  const shown = field.codes.slice(0, 12).join(", ");
  return field.codes.length > 12 ? `${shown} … (${field.codes.length} codes, see the page of ids)` : shown;
}

/** Reads a column of codes by code, label and listed spellings, the person's own first. */
export function readCodes(field: CodeField, said: Spellings = {}, suspect: Suspect = alone): ReadCell {
  const known = spellingsOf(field);
  const own = new Map(Object.entries(said).map(([text, code]) => [fold(text), code]));
  const asked = new Set((field.asks ?? []).map(fold));
  return (cell) => {
    const folded = fold(cell);
    const mine = own.get(folded);
    if (mine === "") return readAs(null);
    if (mine !== undefined && field.codes.includes(mine)) return readAs(mine);
    const code = known.get(folded);
    if (code !== undefined) return readAs(code);
    if (notRecorded.has(folded)) return readAs(null);
    return asked.has(folded) ? askWhich(field, cell, folded) : unknownText(cell, field, suspect);
  };
}

/** A spelling of the codebook that several codes share: the person says which. */
function askWhich(field: CodeField, cell: string, folded: string): CellRead {
  return unread("value-unknown", `${describe(cell)}, which several codes share`, { choices: choicesOf(field), spelling: folded });
}

/** Text that is no spelling known here: an identifier, prose, a date that a spreadsheet made of `3/4`, or a code misspelt. */
function unknownText(cell: string, field: CodeField, suspect: Suspect): CellRead {
  const choices = choicesOf(field);
  if (isLostToDate(cell)) return unread("number-lost-to-spreadsheet", "a date", { choices });
  const isProse = cell.length > longestCharacters || cell.split(/\s+/).length > longestWords;
  // what holds no letter is no word that could be explained: a number or mark typed into the wrong column
  const code = isProse ? "free-text-in-code" : /\p{L}/u.test(cell) ? "value-unknown" : "not-a-code";
  return notUnderstood(cell, unread(code, describe(cell), { choices }), suspect);
}

/** Whether a cell of a complication column says that none was found. A hyphen alone counts, so the cell isn't folded. */
export function saysNoEvent(cell: string): boolean {
  return noEventValues.includes(cell.trim().toLowerCase());
}
