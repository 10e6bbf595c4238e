import * as z from "zod";
import { ownIndexId } from "@/lib/codebook";
import { conditionField, conditionFieldIds } from "./fields";

/** One of a set (`null`: not recorded), a range with both ends in it, or whether anything was recorded. */
export type Condition =
  | readonly (string | number | boolean | null)[]
  | { readonly from?: number | undefined; readonly to?: number | undefined }
  | { readonly missing: boolean };

/**
 * A cohort as plain JSON: conditions on fields, all of which must hold; `any`: at least one of these; `all`: each of these; `not`: not this.
 * The same object stands in the URL, behind `--cohort` and under a saved name.
 */
export type Where = {
  readonly [field: string]: Condition | readonly Where[] | Where | undefined;
  readonly any?: readonly Where[] | undefined;
  readonly all?: readonly Where[] | undefined;
  readonly not?: Where | undefined;
};

/** A cohort that can't be read: what was wrong, for the page that says so. */
export class CohortError extends Error {
  override name = "CohortError";
}

const set = z.array(z.union([z.string(), z.number(), z.boolean(), z.null()])).min(1);
const range = z.strictObject({ from: z.number().optional(), to: z.number().optional() });
const missing = z.strictObject({ missing: z.boolean() });
const condition = z.union([set, range, missing]);
const groups = new Set(["any", "all", "not"]);

/** @throws CohortError when the text is no cohort */
export function parseWhere(text: string): Where {
  if (text.length > 20_000) throw new CohortError("a cohort requires at most 20 000 characters");
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new CohortError("a cohort requires JSON, received something else");
  }
  return checkWhere(value);
}

/** @throws CohortError when the value is no cohort */
export function checkWhere(value: unknown, depth = 0): Where {
  if (typeof value !== "object" || value === null || Array.isArray(value)) throw new CohortError("a cohort requires an object");
  if (depth > 6) throw new CohortError("a cohort requires at most six levels");
  const checked: Record<string, Condition | readonly Where[] | Where> = {};
  for (const [key, part] of Object.entries(value))
    checked[key] = groups.has(key) ? checkGroup(key, part, depth) : checkCondition(key, part);
  return checked;
}

function checkGroup(key: string, part: unknown, depth: number): readonly Where[] | Where {
  if (key === "not") return checkWhere(part, depth + 1);
  if (!Array.isArray(part) || part.length === 0) throw new CohortError(`${key} requires a list of cohorts`);
  return part.map((one) => checkWhere(one, depth + 1));
}

function checkCondition(id: string, part: unknown): Condition {
  const field = conditionField(id);
  if (!field) throw new CohortError("a condition requires a field of the codebook that a cohort can name, received another word");
  const parsed = condition.safeParse(part);
  if (!parsed.success) throw new CohortError(`${id} requires a list of values, a range {from, to} or {missing}`);
  const ranged = !Array.isArray(parsed.data) && !("missing" in parsed.data);
  if (ranged && field.kind !== "number" && field.kind !== "count")
    throw new CohortError(`${id} holds no numbers, so it requires a list of values`);
  if (Array.isArray(parsed.data) && field.kind === "code") {
    const codes: readonly (string | number | boolean | null)[] = field.codes;
    if (!parsed.data.every((value) => value === null || codes.includes(value)))
      throw new CohortError(`${id} requires codes among ${field.codes.join(", ")}`);
  }
  return parsed.data;
}

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

export function isSet(part: Condition): part is readonly (string | number | boolean | null)[] {
  return Array.isArray(part);
}

/** Every field that a cohort names, however deep. */
export function fieldsNamed(where: Where): ReadonlySet<string> {
  const named = new Set<string>();
  for (const [key, part] of Object.entries(where)) {
    if (!groups.has(key)) named.add(key);
    else for (const inner of [part].flat()) for (const field of fieldsNamed(inner as Where)) named.add(field);
  }
  return named;
}
