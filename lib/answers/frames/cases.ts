import { fieldsOf, type Value } from "@/lib/codebook";
import { fieldsNamed, isDerivedField, type Look, matches, type Where } from "@/lib/cohorts";
import type { SegmentCase } from "@/lib/outcomes";
import type { Frame, Registry, State } from "@/lib/registry";
import { type BaseCase, baseCases } from "./base-cases";
import { derivedValue } from "./derived";
import { columnOf, rowsByEntity, valueAt } from "./read";

const personFields: ReadonlySet<string> = new Set(fieldsOf("person").map(([id]) => id));

/** A segment with what a split or a further question may look up about it. */
export type Case = { readonly segment: SegmentCase; readonly look: Look };

/** The segments of a cohort as of a state, as cases; `fields` are those that the split names. */
export async function casesOf(registry: Registry, state: State, where: Where, fields: readonly string[]): Promise<readonly Case[]> {
  const named = [...new Set([...fieldsNamed(where), ...fields])].filter((id) => !isDerivedField(id) && id !== "arrangement");
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
    const look: Look = (field) => lookUp(field, one, segments, row, persons, person);
    if (matches(where, look)) cases.push({ segment: one.segment, look });
  }
  return cases;
}

function lookUp(field: string, one: BaseCase, segments: Frame, row: number, persons: Frame, person: number | undefined): Value {
  if (field === "arrangement") return one.arrangement;
  if (isDerivedField(field)) return derivedValue(field, one.segment);
  if (!personFields.has(field)) return valueAt(columnOf(segments, field), row);
  return person === undefined ? null : valueAt(columnOf(persons, field), person);
}
