import type { CaseEvent, CaseSegment, Held } from "@/lib/answers";
import type { CourseForFigure, MomentForFigure, TreatmentForFigure } from "@/lib/charts";
import { codeWords } from "../_words";

/** `right femur, case 17`. */
export function figureName(number: number, { bone, side }: Pick<CaseSegment, "bone" | "side">): string {
  return `${side} ${codeWords(bone)}, case ${number}`;
}

export function treatmentOf(number: number, segment: CaseSegment): TreatmentForFigure {
  const day = daysRecorded(segment.recorded);
  const known = [...segment.phases.map(({ to }) => to), ...segment.visits.map((visit) => visit.day), ...day.values()];
  return {
    title: figureName(number, segment),
    phases: segment.phases,
    films: segment.visits.flatMap((visit) => (visit.cortices === null ? [] : [{ day: visit.day, cortices: visit.cortices }])),
    moments: [...momentsRecorded(day), ...segment.events.flatMap(momentOfEvent)],
    lastDay: Math.max(0, ...known),
  };
}

const recordedMoments: readonly (readonly [field: string, kind: MomentForFigure["kind"], words: string])[] = [
  ["fullWeightBearingDay", "bearing", "full weight bearing"],
  ["fixatorRemovalDay", "removal", "fixator removed"],
  ["implantRemovalDay", "removal", "implant removed"],
  ["lastFollowUpDay", "seen", "last seen"],
];

function daysRecorded(recorded: readonly Held[]): ReadonlyMap<string, number> {
  return new Map(
    recorded.flatMap(({ field, kind, value }) => (kind === "days" && typeof value === "number" ? [[field, value] as const] : [])),
  );
}

function momentsRecorded(days: ReadonlyMap<string, number>): readonly MomentForFigure[] {
  return recordedMoments.flatMap(([field, kind, text]) => {
    const day = days.get(field);
    return day === undefined ? [] : [{ kind, day, text }];
  });
}

function momentOfEvent({ day, type, complication, recorded }: CaseEvent): readonly MomentForFigure[] {
  if (day === null) return [];
  const handling = recorded.find(({ field }) => field === "handling")?.value;
  const text = typeof handling === "string" ? `${codeWords(type)}, ${codeWords(handling)}` : codeWords(type);
  return [{ kind: complication ? "event" : "planned", day, text }];
}

export function courseFor(number: number, segment: CaseSegment): CourseForFigure {
  const { points, prescribed, plannedMm, gained } = segment.course;
  return { title: figureName(number, segment), points, prescribed, plannedMm, gained };
}
