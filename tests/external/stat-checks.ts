import { readFileSync } from "node:fs";

/** A value of a check: numbers, codes, null for "not reached", or lists and records of them. */
export type CheckValue = number | string | boolean | null | readonly CheckValue[] | { readonly [field: string]: CheckValue };
export type CheckRecord = { readonly [field: string]: CheckValue };

/**
 * One answer from outside: printed in a publication, or computed with R (`provenance`).
 * `read` says how a printed figure was read: in the source itself, quoted in a second text, a certified data set, or from memory.
 * `tolerance` is absolute: one number, or one a field with `default`; it follows the digits that the source prints.
 * `computed` holds the full-precision answer of R to a check whose `expected` is printed.
 */
export type StatCheck = {
  readonly id: string;
  readonly method: string;
  readonly source: string;
  readonly provenance: string;
  readonly read: string;
  readonly note?: string;
  readonly input: CheckRecord;
  readonly expected: CheckRecord;
  readonly tolerance: number | { readonly [field: string]: number };
  readonly computed?: CheckRecord;
};

const file = new URL("./stat-checks.json", import.meta.url);
const all = JSON.parse(readFileSync(file, "utf8")) as readonly StatCheck[];

/** Every check whose id starts with the prefix, with shared data put in. */
export function checksOf(prefix: string): readonly StatCheck[] {
  return all.filter(({ id }) => id.startsWith(prefix)).map(withData);
}

/** One check by its id, with shared data put in. */
export function check(id: string): StatCheck {
  const found = all.find((candidate) => candidate.id === id);
  if (!found) throw new RangeError(`check requires an id of stat-checks.json, received ${id}`);
  return withData(found);
}

/** The absolute tolerance of one field of a check. */
export function toleranceOf({ tolerance }: StatCheck, field: string): number {
  if (typeof tolerance === "number") return tolerance;
  const found = tolerance[field] ?? tolerance.default;
  if (found === undefined) throw new RangeError(`toleranceOf requires a tolerance or a default for the field, received ${field}`);
  return found;
}

/** A column of numbers of a check's input, from `columns` when it is a table. */
export function numbers({ input, id }: StatCheck, name: string): number[] {
  const columns = input.columns as CheckRecord | undefined;
  const found = columns?.[name] ?? input[name];
  if (!Array.isArray(found)) throw new RangeError(`numbers requires a column ${name} in check ${id}`);
  return found.map(Number);
}

/** `data_ref` names the check that holds the data: its input is put under this one's own fields. */
function withData(one: StatCheck): StatCheck {
  const { data_ref, ...own } = one.input;
  return typeof data_ref === "string" ? { ...one, input: { ...check(data_ref).input, ...own } } : one;
}
