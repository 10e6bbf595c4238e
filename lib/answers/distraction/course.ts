/** One segment of the courses: days from the start of distraction. */
export type DistractionCourse = {
  readonly segment: number;
  readonly person: number;
  readonly rateMmPerDay: number | null;
  readonly plannedMm: number | null;
  /** Days from the start of distraction, rising. */
  readonly visits: readonly { readonly day: number; readonly distractedMm: number }[];
};
