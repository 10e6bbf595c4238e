import type { CourseVisit, SegmentCase } from "../case";

const bridgedCortices = 3;
/** Lengths read from films differ by about a millimetre when nothing has moved (a choice). */
const sameLengthMm = 1;

/** The days of a segment, with those that a visit series gives where none was recorded. */
export type Course = {
  readonly distractionEndDay: number | null;
  readonly consolidationDay: number | null;
  readonly lastNotHealedDay: number | null;
  readonly lastFilmDay: number | null;
  readonly derived: { readonly distractionEnd: boolean; readonly consolidation: boolean };
};

/**
 * Days recorded, or derived from the visits and marked so: distraction ends at the first visit with the planned length, or with the last
 * length when a later visit shows the same; consolidation is the first visit with at least three cortices bridged.
 * The last film is the latest of the recorded film days and the visits with cortices.
 */
export function courseOf(segment: SegmentCase): Course {
  const visits = [...segment.visits].sort((a, b) => a.visitDay - b.visitDay);
  const healedVisit = visits.find((visit) => (visit.cortices ?? 0) >= bridgedCortices)?.visitDay ?? null;
  const consolidationDay = segment.consolidationDay ?? healedVisit;
  const end = segment.distractionEndDay ?? lengthReachedDay(visits, segment.plannedGainMm);
  const films = visits.filter((visit) => visit.cortices !== null);
  const unhealed = films.filter(
    (visit) => (visit.cortices ?? 0) < bridgedCortices && (consolidationDay === null || visit.visitDay < consolidationDay),
  );
  return {
    distractionEndDay: end,
    consolidationDay,
    lastNotHealedDay: latest([segment.lastNotHealedDay, ...unhealed.map((visit) => visit.visitDay)]),
    lastFilmDay: latest([segment.lastNotHealedDay, segment.lastFilmDay, ...films.map((visit) => visit.visitDay)]),
    derived: {
      distractionEnd: segment.distractionEndDay === null && end !== null,
      consolidation: segment.consolidationDay === null && consolidationDay !== null,
    },
  };
}

function lengthReachedDay(visits: readonly CourseVisit[], plannedMm: number | null): number | null {
  const lengths = visits.filter((visit) => visit.distractedMm !== null);
  const planned = plannedMm === null ? undefined : lengths.find((visit) => (visit.distractedMm ?? 0) >= plannedMm - sameLengthMm);
  if (planned) return planned.visitDay;
  const last = lengths.at(-1);
  const reached = last && lengths.find((visit) => (visit.distractedMm ?? 0) >= (last.distractedMm ?? 0) - sameLengthMm);
  return reached && reached !== last ? reached.visitDay : null;
}

function latest(days: readonly (number | null)[]): number | null {
  const held = days.filter((day) => day !== null);
  return held.length === 0 ? null : Math.max(...held);
}
