import type { BodyMeasureRow, PersonRow, ScoreRow } from "@/lib/codebook";
import type { SegmentCase } from "../case";

/** What a measure of a person may know. */
export type PersonCase = Pick<
  PersonRow,
  "sex" | "indication" | "aetiology" | "proportionReference" | "followUpStatus" | "followUpStatusDay" | "line"
> & {
  readonly person: number;
  /** Age at the first operation of the cohort, years. */
  readonly ageAtSurgeryYears: number | null;
  readonly segments: readonly SegmentCase[];
  readonly bodyMeasures: readonly BodyMeasure[];
  readonly scores: readonly Pick<ScoreRow, "scoreCode" | "scoreDay" | "scoreValue">[];
};

export type BodyMeasure = Omit<BodyMeasureRow, "person">;
export type Moment = "before" | "after";

/**
 * The body measure of a moment: *before* is the latest recorded before, or on the day of, the first operation; *after* the latest final one,
 * and failing that the latest measured after the last end of distraction.
 */
export function bodyMeasureAt(person: PersonCase, moment: Moment, held: (measure: BodyMeasure) => boolean): BodyMeasure | null {
  const operations = person.segments.map((segment) => segment.surgeryDay);
  if (operations.length === 0) return null;
  const first = Math.min(...operations);
  const last = Math.max(...person.segments.map((segment) => segment.distractionEndDay ?? segment.surgeryDay));
  const fits =
    moment === "before"
      ? (one: BodyMeasure) => one.occasion === "before" || (one.occasion === null && one.bodyDay <= first)
      : (one: BodyMeasure) => one.occasion === "final" || (one.occasion === null && one.bodyDay > last);
  const candidates = person.bodyMeasures.filter((one) => fits(one) && held(one));
  return candidates.sort((a, b) => b.bodyDay - a.bodyDay)[0] ?? null;
}
