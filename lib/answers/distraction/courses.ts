import { fieldsNamed, type Where } from "@/lib/cohorts";
import { courseOf, isLeg, type SegmentCase, usualOptions } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { type Case, casesOf } from "../frames/cases";
import { fieldsOfSplit, type Group, type GroupKey, splitBy } from "../healing/groups";
import { readMeasure } from "../measures/catalogue";
import { collect, whoIs } from "../measures/measured";
import { type NumberSummary, summariseNumbers } from "../measures/numbers";
import { type Head, openQuestion } from "../question/open";
import type { DistractionCourse } from "./course";
import { type LagOfGroup, lagsOf } from "./lags";

export type CoursesGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  /** Segments with lengths on film during distraction: segments = n + Σ excluded. */
  readonly n: number;
  readonly excluded: Readonly<Record<string, number>>;
  readonly courses: readonly DistractionCourse[];
  readonly rate: NumberSummary;
  readonly lags: readonly LagOfGroup[];
  /** Of the courses: in how many a pause, or a reversal, is recorded, of how many in which that was recorded. */
  readonly paused: Recorded;
  readonly reversed: Recorded;
};
export type Recorded = { readonly any: number; readonly recorded: number };
export type CoursesAnswer = Head & {
  readonly measure: "distraction-course";
  readonly unit: "mm";
  readonly definition: { readonly title: string; readonly sentence: string };
  readonly groups: readonly CoursesGroup[];
};

/** How far segments were distracted, visit by visit, beside what was prescribed; pauses and reversals as recorded. */
export async function distractionCourses(
  registry: Registry,
  asked: { readonly by?: readonly string[]; readonly where?: Where; readonly asOf?: number },
): Promise<CoursesAnswer> {
  const head = await openQuestion(registry, {
    ...asked,
    measure: "distraction-course",
    method: "length over visits during distraction; mean rate (CR2 by patient); median lag with quartiles, type 7",
  });
  const cases = await casesOf(registry, head.state, asked.where ?? {}, fieldsOfSplit(head.by));
  const boneNamed = fieldsOfSplit(head.by).includes("bone") || fieldsNamed(asked.where ?? {}).has("bone");
  return {
    ...head,
    measure: "distraction-course",
    unit: "mm",
    definition: {
      title: "Course of distraction",
      sentence:
        "length distracted on film at each visit from the start of distraction to its end, beside the prescribed rate up to the plan",
    },
    groups: splitBy(cases, head.by).map((group) => answerGroup(group, boneNamed)),
  };
}

function answerGroup(group: Group, boneNamed: boolean): CoursesGroup {
  const excluded: Record<string, number> = {};
  const kept: Case[] = [];
  for (const one of group.cases) {
    const because = whyNoCourse(one.segment, boneNamed);
    if (because === null) kept.push(one);
    else excluded[because] = (excluded[because] ?? 0) + 1;
  }
  const courses = kept.map(({ segment }) => courseFor(segment));
  const rate = readMeasure("distraction-rate-of-course");
  const { rows } = collect(
    kept,
    ({ segment }) => (rate?.of === "segment" ? rate.read(segment, usualOptions) : { measured: false, because: "no-visits" }),
    whoIs,
  );
  return {
    key: group.key,
    label: group.label,
    patients: new Set(group.cases.map(({ segment }) => segment.person)).size,
    segments: group.cases.length,
    n: courses.length,
    excluded,
    courses,
    rate: summariseNumbers(rows),
    lags: lagsOf(courses),
    paused: recordedIn(kept, ({ daysPaused }) => daysPaused),
    reversed: recordedIn(kept, ({ reversedMm }) => reversedMm),
  };
}

function recordedIn(cases: readonly Case[], pick: (segment: SegmentCase) => number | null): Recorded {
  const held = cases.map(({ segment }) => pick(segment)).filter((value) => value !== null);
  return { any: held.filter((value) => value > 0).length, recorded: held.length };
}

function whyNoCourse(segment: SegmentCase, boneNamed: boolean): string | null {
  if (segment.procedure === "transport") return "not-lengthening";
  if (!boneNamed && !isLeg(segment.bone)) return "bone-apart";
  if (segment.distractionStartDay === null) return "no-start";
  return courseFor(segment).visits.length === 0 ? "no-visits" : null;
}

/** Dial counts are not lengths, so only films count. */
function courseFor(segment: SegmentCase): DistractionCourse {
  const start = segment.distractionStartDay ?? 0;
  const end = courseOf(segment).distractionEndDay ?? Number.POSITIVE_INFINITY;
  const visits = segment.visits
    .filter(({ distractedBy, visitDay }) => distractedBy !== "dial" && visitDay >= start && visitDay <= end)
    .flatMap(({ visitDay, distractedMm }) => (distractedMm === null ? [] : [{ day: visitDay - start, distractedMm }]))
    .sort((a, b) => a.day - b.day);
  return {
    segment: segment.segment,
    person: segment.person,
    rateMmPerDay: segment.prescribedRateMmPerDay,
    plannedMm: segment.plannedGainMm,
    visits,
  };
}
