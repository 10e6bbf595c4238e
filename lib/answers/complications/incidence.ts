import { neededOperation } from "@/lib/outcomes";
import { aalenJohansen } from "@/lib/stats";
import type { CurvePoint } from "../types";
import type { CountedSegment } from "./counted";

export type Followed = { readonly days: number; readonly event: 0 | 1 | 2; readonly person: number };

/** Days from surgery to the first event (1), death (2), or the end of the time at risk (0): last seen, or a planned removal. */
function followed({ one: { segment }, events }: CountedSegment, operationsOnly: boolean): Followed | null {
  const counted = operationsOnly ? events.filter(neededOperation) : events;
  const first = counted.flatMap(({ onsetDay }) => (onsetDay === null ? [] : [onsetDay])).sort((a, b) => a - b)[0];
  const planned = segment.implantOutReason === "planned" ? segment.implantRemovalDay : null;
  const seen = latest([
    segment.lastFollowUpDay,
    segment.lastFilmDay,
    segment.consolidationDay,
    segment.fullWeightBearingDay,
    first ?? null,
  ]);
  if (seen === null) return null;
  const end = planned === null ? seen : Math.min(seen, planned);
  const person = segment.person;
  if (first !== undefined && first <= end) return { days: Math.max(first - segment.surgeryDay, 0.5), event: 1, person };
  return { days: Math.max(end - segment.surgeryDay, 0.5), event: segment.died ? 2 : 0, person };
}

function latest(days: readonly (number | null)[]): number | null {
  const held = days.filter((day) => day !== null);
  return held.length === 0 ? null : Math.max(...held);
}

export type Incidence = {
  readonly curve: readonly CurvePoint[];
  readonly n: number;
  readonly notFollowed: number;
  readonly at12Months: CurvePoint | null;
};

const yearDays = 365;

/** The segments that were followed at all, each to its first event or the end of its time at risk. */
export function followedOf(
  segments: readonly CountedSegment[],
  { operationsOnly }: { readonly operationsOnly: boolean },
): readonly Followed[] {
  return segments.map((one) => followed(one, operationsOnly)).filter((row) => row !== null);
}

/** Cumulative incidence by Aalen and Johansen over segments, errors by patient. Event days that aren't recorded leave their segment out. */
export function incidenceOf(segments: readonly CountedSegment[], options: { readonly operationsOnly: boolean }): Incidence {
  const rows = followedOf(segments, options);
  const notFollowed = segments.length - rows.length;
  if (rows.length === 0) return { curve: [], n: 0, notFollowed, at12Months: null };
  const answer = aalenJohansen({
    times: rows.map(({ days }) => days),
    event: rows.map(({ event }) => event),
    patient: rows.map(({ person }) => person),
    cause: 1,
  });
  const cause = answer.causes.find((one) => one.cause === 1);
  const curve = answer.time.map((day, i) => ({
    day,
    atRisk: answer.atRisk[i] ?? 0,
    estimate: cause?.incidence[i] ?? 0,
    lower: cause?.lower[i] ?? null,
    upper: cause?.upper[i] ?? null,
  }));
  return { curve, n: rows.length, notFollowed, at12Months: curve.filter(({ day }) => day <= yearDays).at(-1) ?? null };
}
