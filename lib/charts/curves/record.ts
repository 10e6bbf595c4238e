import { thresholds } from "@/lib/stats";
import type { FigureSource, GroupCounts, Limits, NoteForFigure } from "../figure/source";
import { spanOf } from "../place/span-of";

/** Shares with the event by a day, by group. An answer whose groups bear a curve is one, as it stands. */
export type CurveRecord = FigureSource & {
  /** The clock in words, for the axis; `from surgery` unless told. */
  readonly clock?: string;
  /** What takes a row out of the running without the event, in words; `null` or absent: nothing competes. */
  readonly competing?: string | null;
  readonly groups: readonly CurveGroup[];
};

export type CurveGroup = GroupCounts & {
  /** Rows on the curve: segments (or persons) = n + Σ excluded. */
  readonly n: number;
  /** How many had the event. */
  readonly events?: number;
  readonly curve?: readonly CurvePointForFigure[];
  /** Days by which half had the event; its ends are null where not reached. */
  readonly medianDays?: Limits;
  readonly medianGainMm?: number | null;
  readonly notes?: readonly NoteForFigure[];
};

/**
 * The share with the event by a day, rising; one entry a distinct day, days of censoring included, so that numbers at risk can be read
 * between them. `atRisk` just before the day.
 */
export type CurvePointForFigure = {
  readonly day: number;
  readonly atRisk: number;
  readonly estimate: number;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Followed to this day without the event. */
  readonly censored?: number;
};

/** The curve as far as it is shown: its tail is cut where fewer than five are at risk. */
export function shownPoints({ curve = [] }: CurveGroup): readonly CurvePointForFigure[] {
  const first = curve.findIndex(({ atRisk }) => atRisk < thresholds.atRiskShown);
  return first === -1 ? curve : curve.slice(0, first);
}

/** How many are at risk just before a day. */
export function atRiskOn({ curve = [] }: CurveGroup, day: number): number {
  return curve.find((point) => point.day >= day - 1e-9)?.atRisk ?? 0;
}

/** The share with the event by a day, with its limits; `null` past the end of what is shown. */
export function shareBy(group: CurveGroup, day: number): CurvePointForFigure | null {
  const points = shownPoints(group);
  const last = points.at(-1);
  if (last === undefined || day > last.day + 1e-9) return null;
  const before = points.filter((point) => point.day <= day + 1e-9).at(-1);
  return before ?? { day, atRisk: group.n, estimate: 0, lower: null, upper: null };
}

/** The last day that any curve shows. */
export function lastDay(groups: readonly CurveGroup[]): number {
  return spanOf(groups.flatMap((group) => shownPoints(group).map(({ day }) => day)))?.[1] ?? 0;
}

const yearDays = 365;

/** One day at which all curves can be read side by side: a year where all reach it, else the last whole month that all reach. */
export function commonDay(groups: readonly CurveGroup[]): number | null {
  const ends = groups.flatMap((group) => shownPoints(group).at(-1)?.day ?? []);
  const end = spanOf(ends)?.[0] ?? null;
  if (end === null) return null;
  return end >= yearDays ? yearDays : end >= 30 ? Math.floor(end / 30) * 30 : end;
}
