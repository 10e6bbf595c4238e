import { type CoursesAnswer, type CoursesGroup, distractionCourses } from "@/lib/answers";
import { type CourseRecord, counted, courseFigure, decimals, grouped, shownEstimate, shownUnit } from "@/lib/charts";
import { drawable } from "../told/drawable";
import { askedOf, type PlaceQuestion, type Registry } from "../told/question";
import type { Told } from "../told/told";
import { byGroup } from "../words/by-group";
import { upperFirst } from "../words/code-words";
import { commandWords } from "../words/command-words";
import { leftOutOf } from "../words/left-out";
import { nobodyIn } from "../words/nobody";
import { notesOf } from "../words/notes";

/** The course of distraction against what was prescribed. */
export async function tellDistractionCourse(registry: Registry, question: PlaceQuestion): Promise<Told> {
  const answer = await distractionCourses(registry, askedOf(question));
  return {
    title: "Course of distraction",
    sentences: courseSentences(answer),
    cautions: [],
    figures: [drawable(courseFigure, recordOf(answer))],
    tables: [],
    definition: answer.definition.sentence,
    method: answer.method,
    leftOut: leftOutOf(answer.groups),
    notes: notesOf(
      [],
      answer.groups.map(({ label, rate }) => ({ label, notes: rate.notes })),
    ),
    references: [{ of: "the courses", stamp: answer.stamp }],
    commands: [commandWords("outcome distraction", question), commandWords("measure distraction-rate-of-course", question)],
    batch: answer.batch,
    dataTo: answer.dataTo,
  };
}

function recordOf(answer: CoursesAnswer): CourseRecord {
  return { ...answer, groups: answer.groups.map((group) => ({ ...group, rate: group.rate.mean, lag: group.lags })) };
}

export function courseSentences({ groups }: CoursesAnswer): readonly string[] {
  const measured = groups.filter(({ n }) => n > 0);
  if (measured.length === 0)
    return [nobodyIn(groups) ? "No segment in this cohort." : "No segment of this cohort has lengths on film during distraction."];
  const rate = byGroup(measured, {
    text: (group) => shownEstimate(group.rate.mean, shownUnit("mm/day")),
    rank: (group) => (group.rate.mean.lower === null ? null : group.rate.mean.estimate),
    lowest: "the slowest",
    highest: "the fastest",
  });
  return [`Distracted, on average: ${rate}.`, ...lagText(measured), pausesText(measured)];
}

/** Of one group: how far behind or ahead at the last fortnight on which enough were seen. */
function lagText(groups: readonly CoursesGroup[]): readonly string[] {
  const [only] = groups;
  const last = only?.lags.at(-1);
  if (!only || groups.length > 1 || !last) return [];
  const where = last.median < 0 ? "behind" : "ahead of";
  const text = `Half of them were ${decimals(Math.abs(last.median), 1)} mm or more ${where} their prescription by day ${last.day}`;
  return [
    `${text} (quartiles ${decimals(last.lower, 1)} to ${decimals(last.upper, 1)} mm ahead; ${counted(last.n, "segment")} seen then).`,
  ];
}

function pausesText(groups: readonly CoursesGroup[]): string {
  const sum = (pick: (group: CoursesGroup) => { readonly any: number; readonly recorded: number }) =>
    groups.reduce((total, group) => ({ any: total.any + pick(group).any, recorded: total.recorded + pick(group).recorded }), {
      any: 0,
      recorded: 0,
    });
  const [paused, reversed] = [sum(({ paused: own }) => own), sum(({ reversed: own }) => own)];
  const of = (word: string, { any, recorded }: typeof paused) =>
    recorded === 0 ? `${word}: not recorded of any` : `${word}: ${grouped(any)} of ${grouped(recorded)} with that recorded`;
  return `${upperFirst(of("paused", paused))}; ${of("reversed", reversed)}.`;
}
