import type { Estimate } from "./record";
import { type CandidateSpans, candidateSpans } from "./survival/candidate-spans";
import { timeAtLevel } from "./survival/curve-quantile";
import { patientsOf } from "./survival/patients-of";
import { type SpanRows, spansOf } from "./survival/require-spans";
import { fitTurnbull } from "./survival/turnbull-fit";

/** `estimate`: the median; nothing tells where in a span the curve falls, so it is the middle of the span that holds it. */
export interface Turnbull extends Estimate {
  readonly medianSpan: readonly [from: number, to: number] | null;
  readonly quartiles: { readonly lower: number | null; readonly upper: number | null };
  /** Where the curve can fall, as columns: after `from`, by `to` (equal: at that time). */
  readonly curve: {
    readonly from: readonly number[];
    readonly to: readonly number[];
    readonly mass: readonly number[];
    /** Share without the event after the span. */
    readonly survival: readonly number[];
  };
  readonly events: number;
  readonly logLikelihood: number;
  readonly iterations: number;
}

/**
 * The curve of events known only to lie between two days (the last film without and the first with): non-parametric maximum likelihood.
 * Exact and right-censored rows alone give Kaplan–Meier. No errors: its variance isn't Greenwood's, so patients are resampled where an
 * interval is wanted.
 * Turnbull 1976, J R Stat Soc B 38:290-295.
 * @throws RangeError, TypeError when the rows are not as `SpanRows` says
 * @example turnbull({ after: [30, 60, 60], by: [60, 90, null] }).medianSpan // => [60, 90]
 */
export function turnbull(rows: SpanRows): Turnbull {
  const spans = spansOf("turnbull", rows);
  const candidates = candidateSpans(spans);
  const { mass, logLikelihood, iterations } = fitTurnbull("turnbull", candidates);
  const known = closedSpans(candidates, mass);
  const middle = known.from.map((from, j) => from + ((known.to[j] as number) - from) / 2);
  const holds = known.survival.findIndex((share) => share < 0.5 + 1.5e-8);
  const at = (level: number) => timeAtLevel(middle, known.survival, level);
  const estimate = at(0.5);
  return {
    estimate,
    se: null,
    df: null,
    lower: null,
    upper: null,
    medianSpan: holds < 0 ? null : [known.from[holds] as number, known.to[holds] as number],
    quartiles: { lower: at(0.75), upper: at(0.25) },
    curve: known,
    events: spans.by.reduce((count, by) => count + (by === Infinity ? 0 : 1), 0),
    logLikelihood,
    iterations,
    n: spans.after.length,
    patients: rows.patient ? patientsOf(rows.patient, spans.after.length).count : null,
    method: "Turnbull’s non-parametric maximum likelihood for interval-censored times",
    convention: "a quantile is the middle of the span that holds it; spans exclude their start",
    notes: estimate === null ? [{ code: "not-reached", what: "The median" }] : [],
  };
}

/** The spans that end: what is left after the last of them has no time. Sums run from the far end, so that none falls below zero. */
function closedSpans({ from, to }: CandidateSpans, mass: Float64Array) {
  const survival = new Float64Array(mass.length);
  for (let j = mass.length - 2; j >= 0; j--) survival[j] = (survival[j + 1] as number) + (mass[j + 1] as number);
  const closed = to.at(-1) === Infinity ? to.length - 1 : to.length;
  const cut = (values: Float64Array) => Array.from(values.subarray(0, closed));
  return { from: cut(from), to: cut(to), mass: cut(mass), survival: cut(survival) };
}
