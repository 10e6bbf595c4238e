import type { AliasIndex } from "./aliases";
import type { HeaderUnit } from "./header-unit";
import type { Counted, HeaderRead } from "./read-header";
import { fieldOfTarget, type Target } from "./target";
import { unitFits } from "./unit-fits";

const timeUnits: ReadonlySet<string | null> = new Set(["days", "weeks", "months", "years"]);

export type Found = { readonly target: Target; readonly unit: HeaderUnit | null };

/** The field that a whole header means in a kind of sheet, and its unit; `null` when it means none. */
export function lookUp({ spoken, unit }: HeaderRead, index: AliasIndex): Found | null {
  for (const [i, { words, counted }] of spoken.entries()) {
    const target = plainly(words, unit, index) ?? (counted && numbered(counted, unit, index));
    if (!target) continue;
    if (unitFits(fieldOfTarget(target), unit)) return { target, unit };
    // a header that means a field by all its words may end in a word that is a unit elsewhere (*readmitted within 30 days*)
    if (i === 0) return { target, unit: null };
  }
  return null;
}

function plainly(words: string, unit: HeaderUnit | null, { plain }: AliasIndex): Target | null {
  const alias = plain.get(words);
  return alias && (!alias.withTimeUnit || timeUnits.has(unit)) ? alias.target : null;
}

function numbered({ words, number }: Counted, unit: HeaderUnit | null, index: AliasIndex): Target | null {
  const alias = index.numbered.get(words);
  if (!alias || alias.target.table === "file" || (alias.withTimeUnit && !timeUnits.has(unit))) return null;
  return { ...alias.target, number };
}
