import { fieldsOf, type Value } from "@/lib/codebook";
import { fieldsNamed, type Look, matches, type Where } from "@/lib/cohorts";
import type { CourseVisit, SegmentCase } from "@/lib/outcomes";
import type { Frame, Registry, State } from "@/lib/registry";
import { columnOf, rowsByEntity, valueAt } from "./read";

/** Fields of a segment that the clocks of healing read. */
const caseFields = [
  "bone",
  "side",
  "procedure",
  "device",
  "osteotomyLevels",
  "surgeryDay",
  "distractionStartDay",
  "distractionEndDay",
  "lastNotHealedDay",
  "lastFilmDay",
  "rescueDay",
  "consolidationDay",
  "fullWeightBearingDay",
  "fixatorRemovalDay",
  "implantRemovalDay",
  "lastFollowUpDay",
  "endState",
  "implantOutReason",
  "gainMm",
  "gainFinalMm",
  "plannedGainMm",
  "plannedGainFinalMm",
  "plannedDaysToConsolidation",
  "planChangeReason",
  "prescribedRateMmPerDay",
  "daysPaused",
  "reversedMm",
  "boneLengthBeforeMm",
  "boneLengthFinalMm",
  "eventsLookedFor",
  "differenceTargetMm",
  "differenceFinalMm",
] as const;

const visitFields = [
  "visitDay",
  "distractedMm",
  "distractedBy",
  "cortices",
  "kneeFlexionDeg",
  "kneeExtensionDeg",
  "ankleDorsiflexionDeg",
  "hipFlexionDeg",
] as const;

const personFields: ReadonlySet<string> = new Set(fieldsOf("person").map(([id]) => id));

/** A segment with what a split or a further question may look up about it. */
export type Case = { readonly segment: SegmentCase; readonly look: Look };

/** The segments of a cohort as of a state, as cases; `fields` are those that the split names. */
export async function casesOf(registry: Registry, state: State, where: Where, fields: readonly string[]): Promise<readonly Case[]> {
  const named = [...new Set([...fieldsNamed(where), ...fields])];
  const ofPerson = named.filter((id) => personFields.has(id));
  const ofSegment = named.filter((id) => !personFields.has(id));
  const segments = await registry.frameAsOf(state, "segment", [...new Set([...caseFields, ...ofSegment])]);
  const persons = await registry.frameAsOf(state, "person", [...new Set(["followUpStatus", ...ofPerson])]);
  const visits = await visitsBySegment(registry, state);
  const { rescues, deaths } = await eventsThatMatter(registry, state);
  const personRow = rowsByEntity(persons.entity);
  const readSegment = readerOf(segments);

  const cases: Case[] = [];
  for (let row = 0; row < segments.length; row++) {
    const person = personRow.get(segments.personEntity[row] as number);
    const look: Look = (field) => lookUp(field, segments, row, persons, person);
    if (!matches(where, look)) continue;
    const entity = segments.entity[row] as number;
    const personEntity = segments.personEntity[row] as number;
    const values = readSegment(row);
    const segment: SegmentCase = {
      ...values,
      rescueDay: values.rescueDay ?? rescues.get(entity) ?? null,
      segment: entity,
      person: personEntity,
      died: deaths.has(personEntity) || (person !== undefined && valueAt(columnOf(persons, "followUpStatus"), person) === "died"),
      visits: visits.get(entity) ?? [],
    };
    cases.push({ segment, look });
  }
  return cases;
}

function lookUp(field: string, segments: Frame, row: number, persons: Frame, person: number | undefined): Value {
  if (!personFields.has(field)) return valueAt(columnOf(segments, field), row);
  return person === undefined ? null : valueAt(columnOf(persons, field), person);
}

type SegmentValues = Omit<SegmentCase, "segment" | "person" | "died" | "visits">;

function readerOf(frame: Frame): (row: number) => SegmentValues {
  const columns = caseFields.map((field) => [field, columnOf(frame, field)] as const);
  // the frame's columns are typed by the codebook's kinds, field by field: the row that they give is the codebook's
  return (row) => Object.fromEntries(columns.map(([field, column]) => [field, valueAt(column, row)])) as SegmentValues;
}

async function visitsBySegment(registry: Registry, state: State): Promise<ReadonlyMap<number, CourseVisit[]>> {
  const frame = await registry.frameAsOf(state, "visit", visitFields);
  const bySegment = new Map<number, CourseVisit[]>();
  for (let row = 0; row < frame.length; row++) {
    const segment = frame.segmentEntity?.[row] ?? -1;
    const visit = Object.fromEntries(visitFields.map((field) => [field, valueAt(columnOf(frame, field), row)])) as CourseVisit;
    const held = bySegment.get(segment);
    if (held) held.push(visit);
    else bySegment.set(segment, [visit]);
  }
  return bySegment;
}

/** First unplanned operation for healing of the regenerate, by segment; persons of whom an event says that they died. */
async function eventsThatMatter(registry: Registry, state: State) {
  const frame = await registry.frameAsOf(state, "event", ["eventType", "onsetDay", "purpose", "planned", "death"]);
  const rescues = new Map<number, number>();
  const deaths = new Set<number>();
  for (let row = 0; row < frame.length; row++) {
    const at = (field: string) => valueAt(columnOf(frame, field), row);
    if (at("death") === true || at("eventType") === "death-any-cause") deaths.add(frame.personEntity[row] as number);
    const day = at("onsetDay");
    const segment = frame.segmentEntity?.[row] ?? -1;
    if (at("purpose") !== "regenerate-healing" || at("planned") === true || segment < 0 || typeof day !== "number") continue;
    rescues.set(segment, Math.min(day, rescues.get(segment) ?? day));
  }
  return { rescues, deaths };
}
