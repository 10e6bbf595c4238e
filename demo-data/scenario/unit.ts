import { partsOf } from "./calendar";
import { cases } from "./caseload";
import { identitiesOf } from "./identity";
import { birthOf, personOf } from "./person";
import type { Person, Segment } from "./types";

/** Every person of the invented unit, in order of number. */
export function demoUnit(): readonly Person[] {
  const kinds = cases();
  const identities = identitiesOf(kinds.map(birthOf));
  const persons = kinds.map((kind, index) => {
    const identity = identities[index];
    if (!identity) throw new RangeError(`demoUnit requires an identity a person, received ${identities.length}`);
    return personOf(kind, identity);
  });
  return withCaseOrder(persons);
}

/** Operations are numbered from 1 in each year, in order of day. */
function withCaseOrder(persons: readonly Person[]): readonly Person[] {
  const operations = persons.flatMap((person) =>
    [...new Set(person.segments.map(({ operation }) => operation))].map((operation) => ({
      index: person.case.index,
      operation,
      day: dayOfOperation(person, operation),
    })),
  );
  const ordered = operations.sort((a, b) => a.day - b.day || a.index - b.index);
  const counts = new Map<number, number>();
  const numbers = new Map<string, number>();
  for (const { index, operation, day } of ordered) {
    const { year } = partsOf(day);
    counts.set(year, (counts.get(year) ?? 0) + 1);
    numbers.set(`${index}/${operation}`, counts.get(year) ?? 0);
  }
  const numbered = (person: Person, segment: Segment): Segment => ({
    ...segment,
    fields: { ...segment.fields, caseOrder: numbers.get(`${person.case.index}/${segment.operation}`) ?? null },
  });
  return persons.map((person) => ({ ...person, segments: person.segments.map((segment) => numbered(person, segment)) }));
}

function dayOfOperation(person: Person, operation: number): number {
  return person.segments.find((segment) => segment.operation === operation)?.fields.surgeryDay ?? 0;
}
