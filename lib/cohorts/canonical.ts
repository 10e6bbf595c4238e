import { ownIndexId } from "@/lib/codebook";
import { conditionFieldIds } from "./fields";
import { type Condition, isSet, type Where } from "./where";

/** The one form of a cohort: fields in codebook order, sets sorted, nothing that says nothing. Equal cohorts give equal text. */
export function canonicalWhere(where: Where): string {
  return JSON.stringify(canonical(where));
}

function canonical(where: Where): Record<string, unknown> {
  const out: Record<string, unknown> = {};
  for (const id of [...conditionFieldIds(), ...ownIndicesIn(where)]) {
    const part = where[id];
    if (part !== undefined) out[id] = canonicalCondition(part as Condition);
  }
  for (const group of ["all", "any"] as const) {
    if (where[group]) out[group] = where[group].map(canonical).sort((a, b) => compare(JSON.stringify(a), JSON.stringify(b)));
  }
  if (where.not) out.not = canonical(where.not);
  return out;
}

/** Indices of the unit's own that a cohort names at its first level, by their letters. */
function ownIndicesIn(where: Where): readonly string[] {
  return Object.keys(where)
    .filter((key) => ownIndexId.test(key))
    .sort();
}

function canonicalCondition(part: Condition): unknown {
  if (isSet(part)) return [...new Set(part)].sort((a, b) => compare(JSON.stringify(a), JSON.stringify(b)));
  if ("missing" in part) return { missing: part.missing };
  return { ...(part.from === undefined ? {} : { from: part.from }), ...(part.to === undefined ? {} : { to: part.to }) };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
