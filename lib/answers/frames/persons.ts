import type { BodyMeasure, PersonCase, SegmentCase } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import type { Case } from "./cases";
import { columnOf, rowReader, rowsByEntity, valueAt } from "./read";

const personFields = ["sex", "indication", "aetiology", "proportionReference", "followUpStatus", "followUpStatusDay", "line"] as const;
const bodyFields = [
  "bodyDay",
  "occasion",
  "bodyDayFrom",
  "statureMm",
  "sittingHeightMm",
  "armSpanMm",
  "weightKg",
  "statureHow",
  "femurLeftMm",
  "femurRightMm",
  "tibiaLeftMm",
  "tibiaRightMm",
  "lengthMethod",
] as const;
const scoreFields = ["scoreCode", "scoreDay", "scoreValue"] as const;

/**
 * The persons of some cases, each with all of its segments among them, its body measures and its scores. Age is that at the first of the segments.
 */
export async function personsOf(registry: Registry, state: State, cases: readonly Case[]): Promise<ReadonlyMap<number, PersonCase>> {
  const frame = await registry.frameAsOf(state, "person", personFields);
  const readPerson = rowReader<Pick<PersonCase, (typeof personFields)[number]>>(frame, personFields);
  const rows = rowsByEntity(frame.entity);
  const ages = columnOf(await registry.frameAsOf(state, "segment", ["ageAtSurgeryYears"]), "ageAtSurgeryYears");
  const bodies = await childrenOf<BodyMeasure>(registry, state, "bodyMeasure", bodyFields);
  const scores = await childrenOf<PersonCase["scores"][number]>(registry, state, "score", scoreFields);
  const persons = new Map<number, PersonCase>();
  for (const [person, held] of casesByPerson(cases)) {
    const row = rows.get(person);
    if (row === undefined) continue;
    const first = held.reduce((a, b) => (b.segment.surgeryDay < a.segment.surgeryDay ? b : a));
    persons.set(person, {
      ...readPerson(row),
      person,
      ageAtSurgeryYears: valueAt(ages, first.row) as number | null,
      segments: held.map(({ segment }): SegmentCase => segment),
      bodyMeasures: bodies.get(person) ?? [],
      scores: scores.get(person) ?? [],
    });
  }
  return persons;
}

export function casesByPerson(cases: readonly Case[]): ReadonlyMap<number, readonly Case[]> {
  const byPerson = new Map<number, Case[]>();
  for (const one of cases) {
    const held = byPerson.get(one.segment.person);
    if (held) held.push(one);
    else byPerson.set(one.segment.person, [one]);
  }
  return byPerson;
}

async function childrenOf<Row>(registry: Registry, state: State, table: "bodyMeasure" | "score", fields: readonly string[]) {
  const frame = await registry.frameAsOf(state, table, fields);
  const readRow = rowReader<Row>(frame, fields);
  const children = new Map<number, Row[]>();
  for (let row = 0; row < frame.length; row++) {
    const person = frame.personEntity[row] as number;
    const child = readRow(row);
    const held = children.get(person);
    if (held) held.push(child);
    else children.set(person, [child]);
  }
  return children;
}
