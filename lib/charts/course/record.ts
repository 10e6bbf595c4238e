import type { Estimated, FigureSource, GroupCounts, NoteForFigure } from "../figure/source";

/** How far segments were distracted, visit by visit, against what was prescribed for each; by group. Days count from the start of distraction. */
export type CourseRecord = FigureSource & { readonly groups: readonly CourseGroup[] };

export type CourseGroup = GroupCounts & {
  /** Segments with visits: segments = n + Σ excluded. */
  readonly n: number;
  /** mm/day. */
  readonly rate: Estimated;
  readonly courses: readonly Course[];
  /** How far the group was ahead (behind: below nothing) of its prescriptions on round days, mm; of the n seen then. */
  readonly lag?: readonly LagPoint[];
  readonly notes?: readonly NoteForFigure[];
};

export type Course = {
  readonly segment: number;
  /** `null`: nothing prescribed is recorded; such a course is not held against anything. */
  readonly rateMmPerDay: number | null;
  readonly plannedMm: number | null;
  /** By day. */
  readonly visits: readonly { readonly day: number; readonly distractedMm: number }[];
};

export type LagPoint = {
  readonly day: number;
  readonly median: number;
  readonly lower: number;
  readonly upper: number;
  readonly n: number;
};

/** What was prescribed to have been reached by a day: the rate from the first day on, up to the plan. */
export function prescribedMm({ rateMmPerDay, plannedMm }: Course, day: number): number | null {
  if (rateMmPerDay === null) return null;
  const reached = rateMmPerDay * Math.max(0, day);
  return plannedMm === null ? reached : Math.min(plannedMm, reached);
}

/** mm ahead of the prescription at each visit; negative is behind. */
export function lagsOf(course: Course): readonly { readonly day: number; readonly aheadMm: number }[] {
  return course.visits.flatMap(({ day, distractedMm }) => {
    const prescribed = prescribedMm(course, day);
    return prescribed === null ? [] : [{ day, aheadMm: distractedMm - prescribed }];
  });
}

/** Slowest and fastest prescribed rate of a group, or `null`. */
export function ratesOf({ courses }: CourseGroup): readonly [slowest: number, fastest: number] | null {
  const rates = courses.flatMap(({ rateMmPerDay }) => (rateMmPerDay === null ? [] : [rateMmPerDay]));
  return rates.length === 0 ? null : [rates.reduce((a, b) => Math.min(a, b)), rates.reduce((a, b) => Math.max(a, b))];
}
