import type { PersonRow, SegmentRow, VisitRow } from "@/lib/codebook";
import { checkCourse } from "../check/course-of-visits";
import { agesAgainstYears, type PairFact, planOfOneSide, sidesUnlike } from "../check/limb-pairs";
import type { AnyRow } from "./blank-row";
import type { Gathered } from "./gather-rows";
import { say } from "./stripped-draft";

/** Checks that need several rows of one person: both sides, both bones of a side, ages over the years, gain against visits. */
export function checkAcross(gathered: Gathered): void {
  for (const [person, segments] of groupSegments(gathered)) {
    const row = gathered.person.get(person)?.row as PersonRow | undefined;
    const facts =
      segments.length < 2 ? [] : [...sidesUnlike(segments, row), ...planOfOneSide(segments, row), ...agesAgainstYears(segments)];
    for (const fact of facts) place(fact, gathered);
  }
  checkCourses(gathered);
}

function groupSegments({ segment }: Gathered): ReadonlyMap<string, SegmentRow[]> {
  const groups = new Map<string, SegmentRow[]>();
  for (const { row } of segment.values()) {
    const known = groups.get(String(row.person));
    if (known) known.push(row as SegmentRow);
    else groups.set(String(row.person), [row as SegmentRow]);
  }
  return groups;
}

function place({ of, other, fact }: PairFact, { segment }: Gathered): void {
  const from = segment.get(segmentKey(of))?.from;
  const otherRow = segment.get(segmentKey(other))?.from.draft.row ?? 0;
  if (from) say(from, { ...fact, about: { ...fact.about, other: otherRow } });
}

function checkCourses({ segment, visit }: Gathered): void {
  const visits = new Map<string, VisitRow[]>();
  for (const { row } of visit.values()) {
    const known = visits.get(segmentKey(row));
    if (known) known.push(row as VisitRow);
    else visits.set(segmentKey(row), [row as VisitRow]);
  }
  for (const [key, rows] of visits) {
    const held = segment.get(key);
    if (held) for (const fact of checkCourse(held.row as SegmentRow, rows)) say(held.from, fact);
  }
}

function segmentKey({ person, bone, side, surgeryDay }: AnyRow | SegmentRow): string {
  return `${person}|${bone}|${side}|${surgeryDay}`;
}
