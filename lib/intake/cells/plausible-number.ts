import { describe } from "../values/describe";
import { type CellRead, unread } from "./cell-read";
import { kindWords, notUnderstood, type Suspect } from "./not-understood";

/** How a column of numbers is looked at. `every`: its header announces numbers of persons, so that none is passed over. */
export type NumberSuspect = { readonly suspect: Suspect; readonly every: boolean };

const longestMeasurement = 6;
const longestQuoted = 4;

/**
 * A number as read, unless it is someone's: one outside its limits or too long for a measurement is looked at by the detectors. What may be
 * an identifier, and every number of five digits or more before the mark (a serial day among them), is described and never quoted.
 */
export function plausibleNumber(cell: string, read: CellRead, { suspect, every }: NumberSuspect): CellRead {
  const digits = digitsIn(cell);
  const isLong = digits > longestMeasurement || digitsIn(cell.split(/[.,]/)[0] ?? "") > longestQuoted;
  const said = isLong ? { ...read, facts: read.facts.map((fact) => ({ ...fact, found: describe(cell) })) } : read;
  if (read.value === null) return notUnderstood(cell, said, suspect);
  const found = every || digits > longestMeasurement ? suspect(cell) : [];
  if (found.length === 0) return said;
  const kind = kindWords(found);
  if (found.some(({ level }) => level === "block")) return unread("identifier-in-cell", describe(cell), { kind });
  return { ...said, facts: [...said.facts, { code: "identifier-suspected", found: describe(cell), about: { kind, kept: "number" } }] };
}

function digitsIn(text: string): number {
  return (text.match(/\d/g) ?? []).length;
}
