import type { AliasIndex } from "./aliases";
import type { HeaderUnit } from "./header-unit";
import type { Counted, HeaderRead } from "./read-header";
import { fieldOfTarget, type Target } from "./target";
import { unitFits } from "./unit-fits";

const timeUnits: ReadonlySet<string | null> = new Set(["days", "weeks", "months", "years"]);

/** The field that a whole header means in a kind of sheet, its unit taken off first; `null` when it means none. */
export function lookUp({ spoken, unit }: HeaderRead, index: AliasIndex): Target | null {
  for (const { words, counted } of spoken) {
    const found = plainly(words, unit, index) ?? (counted && numbered(counted, unit, index));
    if (found && unitFits(fieldOfTarget(found), unit)) return found;
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
