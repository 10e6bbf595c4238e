import type { VisitRow } from "@/lib/codebook";
import { type Course, courseMeasures, type SegmentCase, usualOptions } from "@/lib/outcomes";

/** A length read at a visit, days from surgery. */
export type CoursePoint = { readonly day: number; readonly mm: number; readonly by: "film" | "dial" | null };

/** The course of distraction beside its prescription. */
export type CaseCourse = {
  readonly points: readonly CoursePoint[];
  /** The line as prescribed: from the start at the prescribed rate up to the planned gain, or to the end where there is no plan. */
  readonly prescribed: readonly { readonly day: number; readonly mm: number }[] | null;
  readonly plannedMm: number | null;
  /** The plan after it was changed, where it was. */
  readonly plannedFinalMm: number | null;
  /** The gain recorded at the end of distraction. */
  readonly gained: { readonly day: number; readonly mm: number } | null;
  readonly prescribedRateMmPerDay: number | null;
  readonly stepsPerDay: number | null;
  /** Slope of the course on film, mm/day. */
  readonly rateOfCourseMmPerDay: number | null;
  readonly daysPaused: number | null;
  readonly reversedMm: number | null;
};

const rateOfCourse = courseMeasures.find(({ id }) => id === "distraction-rate-of-course");

export function caseCourseOf(segment: SegmentCase, course: Course, stepsPerDay: number | null): CaseCourse {
  const zero = segment.surgeryDay;
  const rate = rateOfCourse?.read(segment, usualOptions);
  return {
    points: segment.visits.flatMap(({ visitDay, distractedMm, distractedBy }) =>
      distractedMm === null ? [] : [{ day: visitDay - zero, mm: distractedMm, by: distractedBy as VisitRow["distractedBy"] }],
    ),
    prescribed: prescribedLine(segment, course),
    plannedMm: segment.plannedGainMm,
    plannedFinalMm: segment.plannedGainFinalMm,
    gained: gainedAt(segment, course),
    prescribedRateMmPerDay: segment.prescribedRateMmPerDay,
    stepsPerDay,
    rateOfCourseMmPerDay: rate?.measured ? rate.value : null,
    daysPaused: segment.daysPaused,
    reversedMm: segment.reversedMm,
  };
}

function gainedAt({ gainMm, surgeryDay }: SegmentCase, { distractionEndDay }: Course): CaseCourse["gained"] {
  return gainMm === null || distractionEndDay === null ? null : { day: distractionEndDay - surgeryDay, mm: gainMm };
}

function prescribedLine(segment: SegmentCase, { distractionEndDay }: Course): CaseCourse["prescribed"] {
  const { distractionStartDay: start, prescribedRateMmPerDay: rate, plannedGainMm: planned, surgeryDay } = segment;
  if (start === null || rate === null || rate <= 0) return null;
  const days = planned === null ? (distractionEndDay ?? start) - start : planned / rate;
  if (days <= 0) return null;
  return [
    { day: start - surgeryDay, mm: 0 },
    { day: start - surgeryDay + days, mm: rate * days },
  ];
}
