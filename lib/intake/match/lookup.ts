import { fold } from "@/lib/codebook";
import type { AliasIndex } from "./aliases";
import { type HeaderUnit, headerParts } from "./header-unit";
import { fieldOfTarget, type Target } from "./target";
import { unitFits } from "./unit-fits";

export type Found = { readonly target: Target; readonly unit: HeaderUnit | null };

const timeUnits: ReadonlySet<string | null> = new Set(["days", "weeks", "months", "years"]);

/** The field that a whole header means in a kind of sheet, its unit taken off first; `null` when it means none. */
export function lookUp(header: string, index: AliasIndex): Found | null {
  const { words, unit } = headerParts(header);
  for (const candidate of [fold(header), words]) {
    const found = lookUpWords(candidate, unit, index);
    if (found && unitFits(fieldOfTarget(found), unit)) return { target: found, unit };
  }
  return null;
}

function lookUpWords(words: string, unit: HeaderUnit | null, { plain, numbered }: AliasIndex): Target | null {
  const direct = plain.get(words);
  if (direct && (!direct.withTimeUnit || timeUnits.has(unit))) return direct.target;
  const counted = withoutNumber(words);
  const alias = counted ? numbered.get(counted.words) : undefined;
  if (!alias || !counted || alias.target.table === "file") return null;
  if (alias.withTimeUnit && !timeUnits.has(unit)) return null;
  return { ...alias.target, number: counted.number };
}

/** @example withoutNumber("complication 2 date") // => { words: "complication date", number: 2 } */
export function withoutNumber(words: string): { words: string; number: number } | null {
  const numbers = [...words.matchAll(/(?<![\p{N}])(\d{1,2})(?:st|nd|rd|th)?(?![\p{L}\p{N}])/gu)];
  const only = numbers[0];
  if (!only || numbers.length !== 1 || Number(only[1]) < 1) return null;
  const rest = `${words.slice(0, only.index)} ${words.slice(only.index + only[0].length)}`;
  return { words: rest.replace(/ +/g, " ").trim(), number: Number(only[1]) };
}
