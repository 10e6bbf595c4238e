import { fixatorDevices, type HealingStatus, type Reason } from "@/lib/codebook";
import type { SegmentCase } from "../case";
import { type Course, courseOf } from "../healing/course";
import { healingStatus } from "../healing/status";
import { isLeg } from "../proportion/legs";
import { type ClockEvent, endsAtConsolidation, type IndexDefinition } from "./definition";

/** Below this gain an index means little; such segments are shown apart (measures, *Indices*). */
const leastGainMm = 10;

type Timed = { readonly value: number; readonly days: number; readonly gainMm: number | null; readonly status: HealingStatus };

/**
 * What a clock reads on one segment. `censored`: not healed at that many days; `ended`: healing of this kind can't happen any more.
 * Only clocks that end at consolidation censor or end.
 */
export type Reading =
  | ({ readonly reading: "measured"; readonly rescued: boolean; readonly filmIntervalDays: number | null } & Timed)
  | ({ readonly reading: "censored" } & Timed)
  /** `days` to the event that ended it: the rescue, the removal, else the last film; `null` where no such day is recorded. */
  | { readonly reading: "ended"; readonly status: HealingStatus; readonly days: number | null; readonly gainMm: number | null }
  | { readonly reading: "excluded"; readonly because: Reason; readonly status: HealingStatus };

const fixators: ReadonlySet<string | null> = new Set(fixatorDevices);

/**
 * Read a clock on a segment. Reasons come in the order of ids.md §7, the first that applies.
 * An index is `days * 10 / gainMm`, in one division.
 * @param boneNamed the cohort or the split names the bone, so upper limb and rays are not set apart
 */
export function readIndex(segment: SegmentCase, definition: IndexDefinition, { boneNamed = false } = {}): Reading {
  const course = courseOf(segment);
  const status = healingStatus(segment, course);
  const excluded = (because: Reason): Reading => ({ reading: "excluded", because, status });
  const because = apart(segment, boneNamed) ?? withoutGain(segment, status, definition);
  if (because) return excluded(because);
  if (endsAtConsolidation(definition)) return readHealing(segment, course, status, definition);

  const from = dayOf(definition.from, segment, course);
  const to = dayOf(definition.to, segment, course);
  if (from === null) return excluded("no-start");
  if (to === null) return excluded("no-end");
  if (to < from || (definition.inverse && to === from)) return excluded("days-out-of-order");
  if (definition.to === "fixator-removal" && !fixators.has(segment.device)) return excluded("not-a-fixator");
  return { reading: "measured", rescued: false, filmIntervalDays: null, ...timed(segment, status, definition, to - from) };
}

function readHealing(segment: SegmentCase, course: Course, status: HealingStatus, definition: IndexDefinition): Reading {
  if (status === "healing-date-missing") return { reading: "excluded", because: "healing-date-missing", status };
  if (!isAtLandmark(segment, course, status, definition)) return { reading: "excluded", because: "not-at-landmark", status };
  const end = dayOf(definition.to, segment, course);
  const rescuedFirst = segment.rescueDay !== null && (course.consolidationDay === null || segment.rescueDay < course.consolidationDay);
  const from = startOf(segment, course, definition);
  if (definition.rescue === "competing" && rescuedFirst) return endedOn(segment.rescueDay, segment, from, status, definition);
  if (status === "ended-unhealed") return endedOn(unhealedEnd(segment, course), segment, from, status, definition);
  const healed = status === "healed";
  if (healed && definition.criterion !== undefined && criterionOf(segment, course) !== definition.criterion)
    return { reading: "excluded", because: "other-criterion", status };
  if (from === null) return { reading: "excluded", because: "no-start", status };
  const to = healed ? end : course.lastFilmDay;
  if (to === null) return { reading: "excluded", because: "no-end", status };
  if (to < from) return { reading: "excluded", because: "days-out-of-order", status };
  const times = timed(segment, status, definition, to - from);
  if (!healed) return { reading: "censored", ...times };
  return { reading: "measured", rescued: rescuedFirst, filmIntervalDays: filmInterval(course), ...times };
}

function startOf(segment: SegmentCase, course: Course, { from, landmarkDay }: IndexDefinition): number | null {
  return landmarkDay === undefined ? dayOf(from, segment, course) : segment.surgeryDay + landmarkDay;
}

/** Lengthened by the landmark day, and on it neither healed nor ended, nor past its last film. Without a landmark every bone is. */
function isAtLandmark(segment: SegmentCase, course: Course, status: HealingStatus, { landmarkDay, rescue }: IndexDefinition): boolean {
  if (landmarkDay === undefined) return true;
  const landmark = segment.surgeryDay + landmarkDay;
  const rescued = rescue === "competing" ? segment.rescueDay : null;
  const last = { healed: course.consolidationDay, "ended-unhealed": unhealedEnd(segment, course) } as const;
  const until = status === "healed" || status === "ended-unhealed" ? last[status] : course.lastFilmDay;
  const isOver = [until, rescued].some((day) => day !== null && day <= landmark);
  return !isOver && course.distractionEndDay !== null && course.distractionEndDay <= landmark;
}

/** The criterion by which healing was read; consolidation worked out from visits is the first with three cortices. */
function criterionOf(segment: SegmentCase, { derived }: Course): SegmentCase["consolidationCriterion"] {
  return derived.consolidation ? "three-of-four" : segment.consolidationCriterion;
}

function endedOn(to: number | null, segment: SegmentCase, from: number | null, status: HealingStatus, { per }: IndexDefinition): Reading {
  const days = from === null || to === null || to < from ? null : to - from;
  return { reading: "ended", status, days, gainMm: segment[per ?? "gainMm"] };
}

/** The day on which a bone that ended unhealed was last known to be on its way. */
function unhealedEnd(segment: SegmentCase, { lastFilmDay }: Course): number | null {
  return segment.implantRemovalDay ?? segment.fixatorRemovalDay ?? lastFilmDay ?? segment.lastFollowUpDay;
}

function apart(segment: SegmentCase, boneNamed: boolean): Reason | null {
  if (segment.procedure === "transport") return "not-lengthening";
  if (!boneNamed && !isLeg(segment.bone)) return "bone-apart";
  return segment.osteotomyLevels === 2 ? "two-level" : null;
}

function withoutGain(segment: SegmentCase, status: HealingStatus, { per }: IndexDefinition): Reason | null {
  if (status === "still-distracting" && per !== null) return "still-distracting";
  if (per === null) return null;
  const length = segment[per];
  if (length === null) return per.startsWith("planned") ? "no-target" : "no-gain";
  if (length <= 0) return "gain-not-positive";
  return length < leastGainMm ? "gain-under-10mm" : null;
}

function dayOf(event: ClockEvent, segment: SegmentCase, course: Course): number | null {
  switch (event) {
    case "surgery":
      return segment.surgeryDay;
    case "distraction-start":
      return segment.distractionStartDay;
    case "distraction-end":
      return course.distractionEndDay;
    case "consolidation":
      return course.consolidationDay;
    case "full-weight-bearing":
      return segment.fullWeightBearingDay;
    case "fixator-removal":
      return segment.fixatorRemovalDay;
    case "end-of-treatment":
      return fixators.has(segment.device) ? segment.fixatorRemovalDay : course.consolidationDay;
  }
}

function timed(segment: SegmentCase, status: HealingStatus, { per, inverse }: IndexDefinition, days: number): Timed {
  const gainMm = per === null ? segment.gainMm : segment[per];
  if (per === null || gainMm === null) return { value: days, days, gainMm, status };
  return { value: inverse ? gainMm / days : (days * 10) / gainMm, days, gainMm, status };
}

function filmInterval(course: Course): number | null {
  if (course.consolidationDay === null || course.lastNotHealedDay === null) return null;
  return course.consolidationDay > course.lastNotHealedDay ? course.consolidationDay - course.lastNotHealedDay : null;
}
