import type { SegmentRow } from "@/lib/codebook";
import type { CourseVisit, SegmentCase } from "@/lib/outcomes";
import type { Frame, Registry, State } from "@/lib/registry";
import { arrangementsOf } from "./arrangement";
import { columnOf, rowReader, rowsByEntity, valueAt } from "./read";

/** Fields of a segment that the clocks of healing read. */
export const caseFields = [
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
  "consolidationCriterion",
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
  "nailUse",
  "nailDiameterMm",
  "reamedDiameterMm",
  "boneLengthBeforeMm",
  "boneLengthFinalMm",
  "eventsLookedFor",
  "axisDeviationBeforeMm",
  "axisDeviationFinalMm",
  "sagittalAngulationFinalDeg",
  "rotationDifferenceFinalDeg",
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

/** A segment as measures see it, and the arrangement of the sides: as recorded, or worked out from the other side. */
export type BaseCase = { readonly segment: SegmentCase; readonly arrangement: SegmentRow["arrangement"] };

const statesKept = 3;
const kept = new Map<string, Promise<readonly BaseCase[]>>();

/** Every segment of a state, in the order of the frame of segments. Kept for the last three states: questions differ, the segments don't. */
export function baseCases(registry: Registry, state: State): Promise<readonly BaseCase[]> {
  const id = `${registry.folder} ${state.batch} ${state.erasures}`;
  const held = kept.get(id);
  if (held) return held;
  const work = readBaseCases(registry, state);
  kept.set(id, work);
  work.catch(() => kept.delete(id));
  const oldest = kept.keys().next().value;
  if (kept.size > statesKept && oldest !== undefined) kept.delete(oldest);
  return work;
}

async function readBaseCases(registry: Registry, state: State): Promise<readonly BaseCase[]> {
  const segments = await registry.frameAsOf(state, "segment", [...caseFields, "arrangement"]);
  const persons = await registry.frameAsOf(state, "person", ["followUpStatus", "line"]);
  const visits = await visitsBySegment(registry, state);
  const { rescues, deaths } = await eventsThatMatter(registry, state);
  const personRow = rowsByEntity(persons.entity);
  const readSegment = rowReader<Writable>(segments, caseFields, ["segment", "person", "died", "visits"]);
  const cases = Array.from({ length: segments.length }, (_, row): SegmentCase => {
    const [entity, person] = [segments.entity[row] as number, segments.personEntity[row] as number];
    const one = readSegment(row);
    one.rescueDay ??= rescues.get(entity) ?? null;
    one.segment = entity;
    one.person = person;
    one.died = deaths.has(person) || ofPerson(persons, personRow.get(person), "followUpStatus") === "died";
    one.visits = visits.get(entity) ?? [];
    return one;
  });
  const dated = (person: number) => ofPerson(persons, personRow.get(person), "line") === "dated";
  const derived = arrangementsOf(cases, dated);
  const recorded = columnOf(segments, "arrangement");
  return cases.map((segment, row) => ({
    segment,
    arrangement: (valueAt(recorded, row) as SegmentRow["arrangement"]) ?? derived.get(segment.segment) ?? null,
  }));
}

function ofPerson(persons: Frame, row: number | undefined, field: string) {
  return row === undefined ? null : valueAt(columnOf(persons, field), row);
}

type Writable = { -readonly [F in keyof SegmentCase]: SegmentCase[F] };

async function visitsBySegment(registry: Registry, state: State): Promise<ReadonlyMap<number, CourseVisit[]>> {
  const frame = await registry.frameAsOf(state, "visit", visitFields);
  const readVisit = rowReader<CourseVisit>(frame, visitFields);
  const bySegment = new Map<number, CourseVisit[]>();
  for (let row = 0; row < frame.length; row++) {
    const segment = frame.segmentEntity?.[row] ?? -1;
    const visit = readVisit(row);
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
