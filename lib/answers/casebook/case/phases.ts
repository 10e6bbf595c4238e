import type { Course, SegmentCase } from "@/lib/outcomes";

export type PhaseName = "latency" | "distraction" | "consolidation" | "rescue";
/** A stretch of a segment's treatment, days from its surgery. `open`: it had not ended when last seen on film. */
export type Phase = { readonly phase: PhaseName; readonly from: number; readonly to: number; readonly open: boolean };

/**
 * The stretches of a treatment whose both ends are known, or whose end had not come: latency to the start of distraction, distraction to
 * its end, consolidation from there to the day of healing; from a rescue on the stretch is the rescue's, since the bone heals by other means.
 */
export function phasesOf(segment: SegmentCase, course: Course): readonly Phase[] {
  const from = segment.surgeryDay;
  const [start, end] = [segment.distractionStartDay, course.distractionEndDay];
  const healed = course.consolidationDay;
  const until = healed ?? course.lastFilmDay;
  const phases: Phase[] = [];
  const add = (phase: PhaseName, begin: number | null, finish: number | null, open: boolean) => {
    if (begin !== null && finish !== null && finish > begin) phases.push({ phase, from: begin - from, to: finish - from, open });
  };
  add("latency", from, start, false);
  if (end === null) {
    add("distraction", start, until, true);
    return phases;
  }
  add("distraction", start, end, false);
  const rescue = segment.rescueDay;
  if (rescue === null || until === null || rescue >= until) add("consolidation", end, until, healed === null);
  else {
    add("consolidation", end, rescue, false);
    add("rescue", Math.max(rescue, end), until, healed === null);
  }
  return phases;
}
