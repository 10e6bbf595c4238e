import { fieldsOf, ownIndexId, type Value } from "@/lib/codebook";
import { fieldsNamed, isDerivedField, type Look, matches, type Where } from "@/lib/cohorts";
import { type IndexDefinition, indexDefinitions, type SegmentCase } from "@/lib/outcomes";
import type { Frame, Registry, State } from "@/lib/registry";
import { clocksAsOf } from "../measures/clocks";
import { answerCache } from "../question/cache";
import { type BaseCase, baseCases } from "./base-cases";
import { derivedValue } from "./derived";
import { columnOf, rowsByEntity, valueAt } from "./read";

const personFields: ReadonlySet<string> = new Set(fieldsOf("person").map(([id]) => id));

/** A segment with what a split or a further question may look up about it; `row` is its place among all segments of the state. */
export type Case = { readonly row: number; readonly segment: SegmentCase; readonly look: Look };

const cached = answerCache<readonly Case[]>((cases) => cases.length);

/** The segments of a cohort as of a state, as cases; `fields` are those that the split names. One page asks for the same several times. */
export function casesOf(registry: Registry, state: State, where: Where, fields: readonly string[]): Promise<readonly Case[]> {
  const id = `${registry.folder} ${state.batch} ${state.erasures} ${JSON.stringify([where, fields])}`;
  return cached(id, () => readCases(registry, state, where, fields));
}

async function readCases(registry: Registry, state: State, where: Where, fields: readonly string[]): Promise<readonly Case[]> {
  const all = [...new Set([...fieldsNamed(where), ...fields])];
  // the settings are read only for an index that stands there
  const clocks = all.some((id) => ownIndexId.test(id)) ? await clocksAsOf(registry, state.batch) : indexDefinitions;
  const named = all.filter((id) => !isDerivedField(id) && id !== "arrangement");
  const base = await baseCases(registry, state);
  const segments = await registry.frameAsOf(
    state,
    "segment",
    named.filter((id) => !personFields.has(id)),
  );
  const persons = await registry.frameAsOf(
    state,
    "person",
    named.filter((id) => personFields.has(id)),
  );
  const personRow = rowsByEntity(persons.entity);
  const cases: Case[] = [];
  for (const [row, one] of base.entries()) {
    const person = personRow.get(one.segment.person);
    const look: Look = (field) => lookUp(field, one, { clocks, segments, row, persons, person });
    if (matches(where, look)) cases.push({ row, segment: one.segment, look });
  }
  return cases;
}

type Held = {
  readonly clocks: readonly IndexDefinition[];
  readonly segments: Frame;
  readonly row: number;
  readonly persons: Frame;
  readonly person: number | undefined;
};

function lookUp(field: string, one: BaseCase, { clocks, segments, row, persons, person }: Held): Value {
  if (field === "arrangement") return one.arrangement;
  if (isDerivedField(field)) return derivedValue(field, one.segment, clocks);
  if (!personFields.has(field)) return valueAt(columnOf(segments, field), row);
  return person === undefined ? null : valueAt(columnOf(persons, field), person);
}
