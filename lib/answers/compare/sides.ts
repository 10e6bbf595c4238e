import { canonicalWhere, conditionField, fieldsNamed, valueWords, type Where } from "@/lib/cohorts";
import type { Registry, State } from "@/lib/registry";
import { type Case, casesOf } from "../frames/cases";
import { splitBy } from "../healing/groups";
import { NotCompared } from "../measures/not-compared";
import { caseMixFields } from "./balance";

/** What is held against what: two values of a field within a cohort, or two cohorts. */
export type Between =
  | { readonly field: string; readonly values: readonly [Value, Value]; readonly where: Where }
  | { readonly cohorts: readonly [Named, Named] };
export type Value = string | number | boolean | null;
export type Named = { readonly name: string; readonly where: Where };

export type Side = {
  readonly label: string;
  /** The side as a page names it: a value with its field where a bare *yes* or *3* would say nothing. */
  readonly words: string;
  readonly where: Where;
  readonly cases: readonly Case[];
};

/** Three values or more of a field within a cohort. */
export type Several = { readonly field: string; readonly values: readonly Value[]; readonly where: Where };

/** Whether a side names the bone, so that bones of the arm and rays are not set apart. */
export function namesBone({ where }: Side): boolean {
  return fieldsNamed(where).has("bone");
}

/** The cohort of each side. */
export function wheresOf(between: Between): readonly [Named, Named] {
  if ("cohorts" in between) return between.cohorts;
  return [valueSide(between, between.values[0]), valueSide(between, between.values[1])];
}

function valueSide({ field, where }: Pick<Several, "field" | "where">, value: Value): Named {
  return { name: String(value), where: { all: [where, { [field]: [value] }] } };
}

/** A side for each value. */
export function severalSides(registry: Registry, state: State, several: Several): Promise<readonly Side[]> {
  return Promise.all(
    several.values.map(async (value): Promise<Side> => {
      const { name, where } = valueSide(several, value);
      return {
        label: name,
        words: wordOf(several.field, value),
        where,
        cases: await casesOf(registry, state, where, caseMixFields),
      };
    }),
  );
}

/**
 * Both sides with their cases; `fields` are those that are looked up in them.
 * @throws NotCompared when a segment stands on both sides: a bone can't be compared with itself
 */
export async function sidesOf(
  registry: Registry,
  state: State,
  between: Between,
  fields: readonly string[],
): Promise<readonly [Side, Side]> {
  const [a, b] = wheresOf(between);
  const words = wordsOf(between);
  const cases =
    "cohorts" in between ? await casesOfCohorts(registry, state, between, fields) : await casesByField(registry, state, between, fields);
  return [
    { label: a.name, words: words[0], where: a.where, cases: cases[0] },
    { label: b.name, words: words[1], where: b.where, cases: cases[1] },
  ];
}

type Both = readonly [readonly Case[], readonly Case[]];
type Cohorts = Extract<Between, { readonly cohorts: unknown }>;
type ByField = Exclude<Between, Cohorts>;

async function casesOfCohorts(registry: Registry, state: State, { cohorts: [a, b] }: Cohorts, fields: readonly string[]): Promise<Both> {
  const cases = [await casesOf(registry, state, a.where, fields), await casesOf(registry, state, b.where, fields)] as const;
  const first = new Set(cases[0].map(({ row }) => row));
  requireNoneInBoth(cases[1].filter(({ row }) => first.has(row)).length);
  return cases;
}

/** Two groups of a split, as the page that splits has them already. */
async function casesByField(registry: Registry, state: State, { field, values, where }: ByField, fields: readonly string[]): Promise<Both> {
  const groups = splitBy(await casesOf(registry, state, where, [field, ...fields]), [field]);
  const [a, b] = values.map((value) => groups.find(({ key }) => key[field] === value)?.cases ?? []);
  if (values[0] === values[1]) requireNoneInBoth(a?.length ?? 0);
  return [a ?? [], b ?? []];
}

function requireNoneInBoth(both: number): void {
  if (both > 0) throw new NotCompared("in-both", `compare requires groups without a segment in both, received ${both} in both`);
}

function wordsOf(between: Between): readonly [string, string] {
  if ("cohorts" in between) return [between.cohorts[0].name, between.cohorts[1].name];
  return [wordOf(between.field, between.values[0]), wordOf(between.field, between.values[1])];
}

function wordOf(field: string, value: Value): string {
  const label = (conditionField(field)?.label ?? field).toLowerCase();
  const text = typeof value === "string" ? valueWords(value) : `${label}${value === null ? "" : ":"} ${valueWords(value)}`;
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** Two cohorts as a question holds them: in their order, since first and second are not the same. */
export function cohortsOf(between: Between): unknown {
  const plain = (where: Where): unknown => JSON.parse(canonicalWhere(where));
  return "cohorts" in between ? { cohorts: between.cohorts.map(({ where }) => plain(where)) } : plain(between.where);
}
