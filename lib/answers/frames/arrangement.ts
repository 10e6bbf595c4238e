import type { SegmentRow } from "@/lib/codebook";
import type { SegmentCase } from "@/lib/outcomes";

type Arrangement = NonNullable<SegmentRow["arrangement"]>;
/** Up to so many days apart, two operations are counted to one admission (ids.md §4). */
const oneAdmissionDays = 14;

/**
 * The arrangement of the sides worked out from the same bone of the other side, by segment: none, one side; the same day, one anaesthetic
 * of which no more is known; up to fourteen days, one admission; more, separate ones. Days of undated persons can't be compared.
 */
export function arrangementsOf(segments: readonly SegmentCase[], dated: (person: number) => boolean): ReadonlyMap<number, Arrangement> {
  const byBone = new Map<string, SegmentCase[]>();
  for (const segment of segments) {
    const key = `${segment.person} ${segment.bone}`;
    const held = byBone.get(key);
    if (held) held.push(segment);
    else byBone.set(key, [segment]);
  }
  const arrangements = new Map<number, Arrangement>();
  for (const own of byBone.values()) {
    for (const segment of own) {
      const others = own.filter(({ side }) => side !== segment.side).map(({ surgeryDay }) => Math.abs(surgeryDay - segment.surgeryDay));
      if (others.length === 0) arrangements.set(segment.segment, "one-side");
      else if (dated(segment.person)) arrangements.set(segment.segment, byDaysApart(Math.min(...others)));
    }
  }
  return arrangements;
}

function byDaysApart(days: number): Arrangement {
  if (days === 0) return "same-anaesthetic-unknown";
  return days <= oneAdmissionDays ? "same-admission-two-anaesthetics" : "separate-admissions";
}
