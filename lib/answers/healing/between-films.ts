import { estimate } from "@/lib/stats";
import type { OnCurve } from "./curve-rows";
import { seed } from "./median-interval";

/** Healing read as it is known: at some day after the last film without it, by the first film with it. */
export type BetweenFilms = {
  /** Healed bones with a film without healing before; the others count as healed on the day of their film. */
  readonly withFilmBefore: number;
  /** The middle of the span in which the curve falls to a half; `null` where it doesn't. */
  readonly medianDays: number | null;
  readonly medianSpan: readonly [from: number, to: number] | null;
  readonly quartiles: { readonly lower: number | null; readonly upper: number | null };
  readonly method: string;
};

/** Turnbull's curve of a group. `null`: nobody is on the curve, or bones ended unhealed, for which it has no place. */
export function betweenFilms(rows: readonly OnCurve[]): BetweenFilms | null {
  if (rows.length === 0 || rows.some(({ outcome }) => outcome === "ended")) return null;
  const { records } = estimate({
    situation: "healing-curve",
    days: rows.map(({ days }) => days),
    healed: rows.map(({ outcome }) => Number(outcome === "healed")),
    lastUnhealed: rows.map(({ unhealedDay }) => unhealedDay),
    patient: rows.map(({ person }) => person),
    gainCm: rows.map(({ gainMm }) => (gainMm ?? 0) / 10),
    seed,
  });
  const read = records.curves[0]?.betweenFilms;
  if (!read) return null;
  return {
    withFilmBefore: rows.filter(({ outcome, days, unhealedDay }) => outcome === "healed" && unhealedDay < days).length,
    medianDays: read.estimate,
    medianSpan: read.medianSpan,
    quartiles: read.quartiles,
    method: read.method,
  };
}
