import { alignmentOf } from "./alignment";
import { closingDay, type Day, yearsBetween } from "./calendar";
import { type Chance, chanceOf } from "./chance";
import { deviceOf, entryOf } from "./device";
import { type Stop, stopOf } from "./distraction";
import { eventsOf } from "./events";
import { outcomeOf } from "./outcome";
import { seed } from "./parameters";
import type { PlannedOperation, PlannedSegment } from "./plan";
import { type Course, courseOf } from "./segment";
import { visitsOf } from "./segment-visits";
import { type Technique, techniqueOf } from "./technique";
import type { Bone, Case, Device, Entry, Fate, PersonDraft, Segment, SegmentDraft } from "./types";
import { clinicDays } from "./visits";

/** What operations of one person share: who is operated on, and what was settled for a bone at the first side. */
export type Patient = {
  readonly case: Case;
  readonly birth: Day;
  readonly person: PersonDraft;
  readonly personEffect: number;
  readonly boneLengthMm: (bone: Bone, side: "left" | "right", day: Day) => number;
};

type Started = {
  readonly planned: PlannedSegment;
  readonly technique: Technique;
  readonly fields: SegmentDraft;
  readonly fate: Fate;
  readonly course: Course;
};

/** One operation: the bones of one anaesthetic, their shared clinic days, and what the sheet records of each. */
export function segmentsOf(patient: Patient, operation: PlannedOperation, number: number): readonly Segment[] {
  const started = operation.segments.map((planned, index) =>
    start(patient, operation, planned, { number, first: index === 0 && number === 0 }),
  );
  const chance = chanceOf(seed, "clinic", patient.case.index, number);
  const distractionEnd = Math.max(...started.map(({ course }) => course.distraction.endDay));
  const solid = Math.max(...started.map(({ course }) => course.solid));
  const clinic = clinicDays(chance, {
    surgery: operation.day,
    distractionEnd,
    solid,
    until: followedUntil(chance, operation.day, started),
  });
  const seen = started.map((one) => recorded(patient, operation, one, { clinic, number }));
  const lastSeen = Math.max(...seen.map(({ fields }) => fields.lastFollowUpDay ?? operation.day));
  return seen.map((segment) => ({ ...segment, fields: { ...segment.fields, lastFollowUpDay: lastSeen } }));
}

/** One operation in fourteen is lost to follow-up in its first year or so; the others are seen for some years. */
function followedUntil(chance: Chance, surgery: Day, started: readonly Started[]): Day {
  const distractionEnd = Math.max(...started.map(({ course }) => course.distraction.endDay));
  const rescue = Math.max(...started.map(({ course }) => course.rescue ?? 0));
  if (started.some(({ fate }) => fate === "distracting")) return distractionEnd - 1;
  if (started.some(({ fate }) => fate === "rescue-open")) return rescue + 62;
  if (chance.happens(0.07)) return Math.max(distractionEnd + 40, surgery + chance.whole(130, 330));
  return surgery + chance.whole(560, 1300);
}

function start(
  patient: Patient,
  { day, stage }: PlannedOperation,
  planned: PlannedSegment,
  at: { number: number; first: boolean },
): Started {
  const { bone, plannedGainMm } = planned;
  const { index, group } = patient.case;
  const age = yearsBetween(patient.birth, day);
  const { device, entry, stop } = sharedBySides(patient, bone, stage, day);
  const technique: Technique = { bone, device, entry, group, age, day, plannedGainMm };
  const chance = chanceOf(seed, "segment", index, at.number, bone, planned.side);
  const fields = techniqueOf(chanceOf(seed, "technique", index, stage, bone), technique);
  const everySide = (patient.case.fate === "date-missing" || patient.case.fate === "distracting") && at.number === 0;
  const fate = at.first || everySide ? patient.case.fate : "ordinary";
  const course = courseOf(chance, { technique, fields, fate, stop, person: patient.person, personEffect: patient.personEffect });
  return { planned, technique, fields, fate, course };
}

/** Device, entry and an early stop are settled once for both sides of a stage. */
function sharedBySides(
  { case: { index, group }, birth }: Patient,
  bone: Bone,
  stage: number,
  day: Day,
): { device: Device; entry: Entry | null; stop: Stop } {
  const chance = chanceOf(seed, "sides", index, stage, bone);
  const age = yearsBetween(birth, day);
  const device = deviceOf(chance, { bone, group, age, day });
  return { device, entry: entryOf(chance, bone, device, group, age), stop: stopOf(chance, bone, group === "stature") };
}

type At = { readonly clinic: readonly Day[]; readonly number: number };

function recorded(
  patient: Patient,
  { day, stage }: PlannedOperation,
  { planned, technique, fields, fate, course }: Started,
  { clinic, number }: At,
): Segment {
  const chance = chanceOf(seed, "record", patient.case.index, number, planned.bone, planned.side);
  const rescue = course.rescue !== null && course.rescue <= Math.min(clinic.at(-1) ?? 0, closingDay) ? course.rescue : null;
  const outcome = outcomeOf(chance, {
    surgery: day,
    device: technique.device,
    fate,
    distraction: course.distraction,
    solid: course.solid,
    rescue,
    clinic,
  });
  const named = { bone: planned.bone, side: planned.side, surgeryDay: day };
  const known: SegmentDraft = { ...named, ...fields, ...outcome.fields, plannedGainMm: planned.plannedGainMm };
  const forced = [...outcome.events, ...(rescue === null ? [] : course.events)];
  const steel = known.nailMaterial === "stainless-steel";
  const { eventsLookedFor, events } = eventsOf(chance, {
    surgery: day,
    bone: planned.bone,
    device: technique.device,
    fields: known,
    forced,
    steel,
  });
  const told = events.some(({ purpose }) => purpose === "regenerate-healing");
  return {
    operation: number,
    events,
    visits: visitsOf(chanceOf(seed, "visits", patient.case.index, number, planned.bone, planned.side), {
      clinic: clinic.filter((visit) => visit <= (known.lastFollowUpDay ?? visit)),
      surgery: day,
      device: technique.device,
      fields: known,
      distraction: course.distraction,
    }),
    fields: {
      episode: patient.case.pattern.endsWith("again") || patient.case.pattern.endsWith("then-femur") ? stage : null,
      procedure: patient.case.group === "loss" ? "transport" : "lengthening",
      eventsLookedFor,
      ...known,
      ...lengths(chance, patient, planned, known),
      rescueDay: told && chance.happens(0.4) ? null : (known.rescueDay ?? null),
      ...stayOf(chance, technique.age),
      ...alignmentOf(chanceOf(seed, "alignment", patient.case.index, number, planned.bone, planned.side), patient.case.group, known),
    },
  };
}

function stayOf(chance: Chance, age: number): SegmentDraft {
  return {
    growthPlates: age < 13.5 ? "open" : age < 16 ? "closing" : "closed",
    nightsInHospital: chance.happens(0.85) ? chance.whole(2, 7) : null,
    readmittedWithin30Days: chance.happens(0.85) ? chance.happens(0.04) : null,
    filmCalibrated: chance.happens(0.75) ? chance.happens(0.9) : null,
  };
}

function lengths(
  chance: Chance,
  patient: Patient,
  { bone, side }: PlannedSegment,
  { gainMm, surgeryDay, consolidationDay }: SegmentDraft,
): SegmentDraft {
  const before = patient.boneLengthMm(bone, side, surgeryDay ?? 0);
  const final = gainMm && consolidationDay && chance.happens(0.75) ? before + gainMm + chance.whole(-1, 1) : null;
  return {
    boneLengthBeforeMm: before,
    boneLengthFinalMm: final,
    boneLengthMethod: chance.among({ "standing-film": 8, ct: 1 }),
  };
}
