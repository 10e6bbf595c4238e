import type { HealingStatus } from "@/lib/codebook";
import type { SegmentCase } from "../case";
import { type Course, courseOf } from "./course";

/** Longest time from distraction start for which a segment without an end counts as still being lengthened (ids.md §4). */
const longestDistractionDays = 240;
/** Seen later than this after the last film, a blank consolidation is a missing date, not an unhealed bone. */
const filmMissingAfterDays = 90;

const endedStates: ReadonlySet<string | null> = new Set(["abandoned", "nonunion", "amputated"]);
const endedRemovals: ReadonlySet<string | null> = new Set(["infection", "breakage", "intolerance"]);

/**
 * The healing status of a segment: the first of the six that applies (measures, *Healing status*).
 * A removal day alone never says that a bone ended unhealed, and *not healed* is known at the last film, never at last seen.
 */
export function healingStatus(segment: SegmentCase, course: Course = courseOf(segment)): HealingStatus {
  if (course.consolidationDay !== null) return "healed";
  if (isStillDistracting(segment, course)) return "still-distracting";
  if (segment.rescueDay !== null) return "rescued";
  if (endedStates.has(segment.endState) || endedRemovals.has(segment.implantOutReason) || segment.died) return "ended-unhealed";
  return isDateMissing(segment, course) ? "healing-date-missing" : "not-healed-at-last-film";
}

function isStillDistracting(segment: SegmentCase, course: Course): boolean {
  const start = segment.distractionStartDay;
  if (start === null || course.distractionEndDay !== null) return false;
  if (segment.fullWeightBearingDay !== null || segment.fixatorRemovalDay !== null || segment.implantRemovalDay !== null) return false;
  return [course.lastFilmDay, segment.lastFollowUpDay].every((day) => day === null || day - start <= longestDistractionDays);
}

function isDateMissing(segment: SegmentCase, course: Course): boolean {
  const film = course.lastFilmDay;
  if (film === null) return true;
  const after = [segment.fullWeightBearingDay, segment.implantRemovalDay, segment.fixatorRemovalDay];
  if (after.some((day) => day !== null && day > film)) return true;
  return segment.lastFollowUpDay !== null && segment.lastFollowUpDay - film > filmMissingAfterDays;
}
