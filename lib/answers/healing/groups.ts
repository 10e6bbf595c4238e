import type { Value } from "@/lib/codebook";
import { conditionField, valueWords } from "@/lib/cohorts";
import type { Case } from "../frames/cases";

export type GroupKey = Readonly<Record<string, Value>>;
export type Group = { readonly key: GroupKey; readonly label: string; readonly cases: readonly Case[] };

/** The cases by each combination of values that occurs: codes in codebook order, numbers rising, *not recorded* last. */
export function splitBy(cases: readonly Case[], by: readonly string[]): readonly Group[] {
  if (by.length === 0) return [{ key: {}, label: "All segments", cases }];
  const groups = new Map<string, { key: GroupKey; cases: Case[] }>();
  for (const one of cases) {
    const values = by.map((field) => one.look(field));
    const id = JSON.stringify(values);
    const group = groups.get(id);
    if (group) group.cases.push(one);
    else groups.set(id, { key: Object.fromEntries(by.map((field, i) => [field, values[i] ?? null])), cases: [one] });
  }
  return [...groups.values()]
    .sort((a, b) => compareKeys(a.key, b.key, by))
    .map(({ key, cases: held }) => ({ key, cases: held, label: labelOf(key, by) }));
}

function labelOf(key: GroupKey, by: readonly string[]): string {
  const words = by.map((field) => wordsFor(field, key[field] ?? null)).join(", ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A bare `yes` or `3` says nothing without its field. */
function wordsFor(field: string, value: Value): string {
  const words = valueWords(value);
  if (typeof value === "string") return words;
  return `${(conditionField(field)?.label ?? field).toLowerCase()}${value === null ? "" : ":"} ${words}`;
}

function compareKeys(a: GroupKey, b: GroupKey, by: readonly string[]): number {
  for (const field of by) {
    const difference = rank(field, a[field] ?? null) - rank(field, b[field] ?? null);
    if (difference !== 0) return difference;
    const [left, right] = [String(a[field]), String(b[field])];
    if (left !== right) return left < right ? -1 : 1;
  }
  return 0;
}

function rank(field: string, value: Value): number {
  if (value === null) return Number.MAX_VALUE;
  if (typeof value === "number") return value;
  if (typeof value === "boolean") return Number(value);
  const definition = conditionField(field);
  return definition?.kind === "code" ? definition.codes.indexOf(value) : 0;
}
