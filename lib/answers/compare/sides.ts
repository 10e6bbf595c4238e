import type { Where } from "@/lib/cohorts";
import type { Registry, State } from "@/lib/registry";
import { type Case, casesOf } from "../frames/cases";
import { caseMixFields } from "./balance";

/** What is held against what: two values of a field within a cohort, or two cohorts. */
export type Between =
  | { readonly field: string; readonly values: readonly [Value, Value]; readonly where: Where }
  | { readonly cohorts: readonly [Named, Named] };
type Value = string | number | boolean | null;
export type Named = { readonly name: string; readonly where: Where };

export type Side = { readonly label: string; readonly where: Where; readonly cases: readonly Case[] };

/** The cohort of each side. */
export function wheresOf(between: Between): readonly [Named, Named] {
  if ("cohorts" in between) return between.cohorts;
  const side = (value: Value): Named => ({ name: String(value), where: { all: [between.where, { [between.field]: [value] }] } });
  return [side(between.values[0]), side(between.values[1])];
}

/** @throws RangeError when a segment stands on both sides: a bone can't be compared with itself */
export async function sidesOf(
  registry: Registry,
  state: State,
  between: Between,
  fields: readonly string[],
): Promise<readonly [Side, Side]> {
  const [a, b] = wheresOf(between);
  const side = async ({ name, where }: Named): Promise<Side> => ({
    label: name,
    where,
    cases: await casesOf(registry, state, where, [...caseMixFields, ...fields]),
  });
  const sides = [await side(a), await side(b)] as const;
  const first = new Set(sides[0].cases.map(({ segment }) => segment.segment));
  const both = sides[1].cases.filter(({ segment }) => first.has(segment.segment)).length;
  if (both > 0) throw new RangeError(`compare requires groups without a segment in both, received ${both} in both`);
  return sides;
}
