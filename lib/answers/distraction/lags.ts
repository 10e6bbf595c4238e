import { quantile } from "@/lib/stats";
import type { DistractionCourse } from "./course";

export type LagOfGroup = {
  readonly day: number;
  readonly median: number;
  readonly lower: number;
  readonly upper: number;
  readonly n: number;
};

const everyDays = 14;
const aroundDays = 7;
/** As with curves: below this many seen, quartiles say nothing. */
const leastSeen = 5;

/** How far courses were ahead of their prescription at the visit nearest to each fortnight, within a week of it; none is carried forward. */
export function lagsOf(courses: readonly DistractionCourse[]): readonly LagOfGroup[] {
  const last = courses.reduce((most, { visits }) => Math.max(most, visits.at(-1)?.day ?? 0), 0);
  const days = Array.from({ length: Math.floor(last / everyDays) }, (_, i) => (i + 1) * everyDays);
  return days.flatMap((day) => {
    const values = courses.flatMap((course) => aheadNear(course, day) ?? []);
    if (values.length < leastSeen) return [];
    const at = (p: number) => quantile({ values, p }).estimate;
    return [{ day, median: at(0.5), lower: at(0.25), upper: at(0.75), n: values.length }];
  });
}

/** mm ahead of what was prescribed by the day of the visit; `null` without a visit near the day, or without a prescription. */
function aheadNear({ rateMmPerDay, plannedMm, visits }: DistractionCourse, day: number): number | null {
  if (rateMmPerDay === null) return null;
  const near = visits.filter((visit) => Math.abs(visit.day - day) <= aroundDays);
  const [first] = near.sort((a, b) => Math.abs(a.day - day) - Math.abs(b.day - day));
  if (!first) return null;
  return first.distractedMm - Math.min(rateMmPerDay * first.day, plannedMm ?? Number.POSITIVE_INFINITY);
}
