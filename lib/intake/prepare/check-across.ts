import type { PersonRow, SegmentRow, VisitRow } from "@/lib/codebook";
import { checkCourse } from "../check/course-of-visits";
import { agesAgainstYears, type PairFact, planOfOneSide, sidesUnlike } from "../check/limb-pairs";
import type { AnyRow } from "./blank-row";
import type { Gathered } from "./gather-rows";
import { eachRow } from "./pace";
import { rowKey } from "./row-key";
import { say } from "./stripped-draft";

/** Checks that need several rows of one person: both sides, both bones of a side, ages over the years, gain against visits. */
export async function checkAcross(gathered: Gathered, signal: AbortSignal | null = null): Promise<void> {
  const check = ([person, segments]: readonly [string, SegmentRow[]]) => {
    // one operation of one person has nothing beside it
    if (segments.length < 2) return;
    const row = gathered.person.get(person)?.row as PersonRow | undefined;
    const facts = [...sidesUnlike(segments, row), ...planOfOneSide(segments, row), ...agesAgainstYears(segments)];
    for (const fact of facts) place(fact, gathered);
  };
  await eachRow([...groupSegments(gathered)], check, { signal });
  await checkCourses(gathered, signal);
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

async function checkCourses({ segment, visit }: Gathered, signal: AbortSignal | null): Promise<void> {
  const visits = new Map<string, VisitRow[]>();
  for (const { row } of visit.values()) {
    const known = visits.get(segmentKey(row));
    if (known) known.push(row as VisitRow);
    else visits.set(segmentKey(row), [row as VisitRow]);
  }
  const check = ([key, rows]: readonly [string, VisitRow[]]) => {
    const held = segment.get(key);
    if (held) for (const fact of checkCourse(held.row as SegmentRow, rows)) say(held.from, fact);
  };
  await eachRow([...visits], check, { signal });
}

function segmentKey(row: AnyRow | SegmentRow): string {
  return rowKey("segment", row as AnyRow);
}
