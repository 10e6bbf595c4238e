import type { KeyedPerson, KeyRing } from "../key";
import type { Draft } from "./draft";

/** Who a draft is about, as the registry knows it, and what to take off its calendar days. */
export type Keyed = { readonly unit: string; readonly person: string; readonly shiftDays: number; readonly surgeon: string | null };

/** Pseudonyms, shifts and surgeons' codes of drafts, each person computed once. Drafts without a local number get `null`. */
export async function keyDrafts(drafts: readonly Draft[], ring: KeyRing, unit: string, onPersons?: (done: number, of: number) => void) {
  const byUnit = groupIds(drafts, unit);
  const persons = new Map<string, ReadonlyMap<string, KeyedPerson>>();
  const of = [...byUnit.values()].reduce((sum, ids) => sum + ids.size, 0);
  let before = 0;
  for (const [code, ids] of byUnit) {
    const list = [...ids];
    const keyed = await ring.persons(code, list, (done) => onPersons?.(before + done, of));
    persons.set(code, new Map(keyed.map((each, i) => [list[i] as string, each])));
    before += list.length;
  }
  const surgeons = await keySurgeons(drafts, ring, unit);
  return (draft: Draft): Keyed | null => {
    const code = draft.unit ?? unit;
    const keyed = persons.get(code)?.get(draft.localId);
    if (!keyed) return null;
    const surgeon = draft.surgeon === null ? null : (surgeons.get(`${code}\u001f${draft.surgeon}`) ?? null);
    return { unit: code, person: keyed.person, shiftDays: keyed.shiftDays, surgeon };
  };
}

function groupIds(drafts: readonly Draft[], unit: string): ReadonlyMap<string, ReadonlySet<string>> {
  const byUnit = new Map<string, Set<string>>();
  for (const draft of drafts) {
    if (draft.localId === "") continue;
    const code = draft.unit ?? unit;
    const ids = byUnit.get(code);
    if (ids) ids.add(draft.localId);
    else byUnit.set(code, new Set([draft.localId]));
  }
  return byUnit;
}

async function keySurgeons(drafts: readonly Draft[], ring: KeyRing, unit: string): Promise<ReadonlyMap<string, string>> {
  const names = new Map<string, Promise<string>>();
  for (const { surgeon, unit: own } of drafts) {
    if (surgeon === null || !/[\p{L}\p{N}]/u.test(surgeon)) continue;
    const code = own ?? unit;
    const key = `${code}\u001f${surgeon}`;
    if (!names.has(key)) names.set(key, ring.surgeonCode(code, surgeon));
  }
  return new Map(await Promise.all([...names].map(async ([key, code]) => [key, await code] as const)));
}
