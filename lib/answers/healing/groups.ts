import type { Value } from "@/lib/codebook";
import { binPlace, binWords, conditionField, parseSplitField, type SplitField, splitValue, valueWords } from "@/lib/cohorts";
import type { Case } from "../frames/cases";

export type GroupKey = Readonly<Record<string, Value>>;
export type Group = { readonly key: GroupKey; readonly label: string; readonly cases: readonly Case[] };

/** Splits of cases, as long as the cases are kept. */
const kept = new WeakMap<readonly Case[], Map<string, readonly Group[]>>();

/**
 * The cases by each combination of values that occurs: codes in codebook order, numbers and bins rising, *not recorded* last.
 * @throws CohortError when a field can't be split by
 */
export function splitBy(cases: readonly Case[], by: readonly string[]): readonly Group[] {
  const splits = kept.get(cases) ?? new Map<string, readonly Group[]>();
  kept.set(cases, splits);
  const groups = splits.get(by.join()) ?? split(cases, by);
  splits.set(by.join(), groups);
  return groups;
}

function split(cases: readonly Case[], by: readonly string[]): readonly Group[] {
  if (by.length === 0) return [{ key: {}, label: "All segments", cases }];
  const fields = by.map(parseSplitField);
  const groups = new Map<Value, { key: GroupKey; cases: Case[] }>();
  for (const one of cases) {
    const values = fields.map((field) => splitValue(field, one.look(field.id)));
    const id = values.length === 1 ? (values[0] ?? null) : JSON.stringify(values);
    const group = groups.get(id);
    if (group) group.cases.push(one);
    else groups.set(id, { key: Object.fromEntries(fields.map((field, i) => [field.id, values[i] ?? null])), cases: [one] });
  }
  return [...groups.values()]
    .sort((a, b) => compareKeys(a.key, b.key, fields))
    .map(({ key, cases: held }) => ({ key, cases: held, label: labelOf(key, fields) }));
}

/** The fields of a split without their cuts: what the cases must be able to look up. */
export function fieldsOfSplit(by: readonly string[]): readonly string[] {
  return by.map((text) => parseSplitField(text).id);
}

function labelOf(key: GroupKey, fields: readonly SplitField[]): string {
  const words = fields.map((field) => wordsFor(field, key[field.id] ?? null)).join(", ");
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A bare `yes` or `3` says nothing without its field. */
function wordsFor({ id, cuts }: SplitField, value: Value): string {
  if (typeof value === "string" && cuts.length === 0) return valueWords(value);
  const label = (conditionField(id)?.label ?? id).toLowerCase();
  if (typeof value === "string") return `${label} ${binWords(id, value)}`;
  return `${label}${value === null ? "" : ":"} ${valueWords(value)}`;
}

function compareKeys(a: GroupKey, b: GroupKey, fields: readonly SplitField[]): number {
  for (const field of fields) {
    const [left, right] = [a[field.id] ?? null, b[field.id] ?? null];
    const difference = rank(field, left) - rank(field, right);
    if (difference !== 0) return difference;
    if (String(left) !== String(right)) return String(left) < String(right) ? -1 : 1;
  }
  return 0;
}

function rank(field: SplitField, value: Value): number {
  if (value === null) return Number.MAX_VALUE;
  if (field.cuts.length > 0) return binPlace(field, value);
  if (typeof value === "number") return value;
  if (typeof value === "boolean") return Number(value);
  const definition = conditionField(field.id);
  return definition?.kind === "code" ? definition.codes.indexOf(value) : 0;
}
