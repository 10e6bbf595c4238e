import { normalQuantile, normalTwoSided } from "./distributions";
import type { Note } from "./notes";
import type { Estimate } from "./record";
import { requireConfidence } from "./require";
import { fitLogNormal, type LogSpans, logSpans } from "./survival/log-normal-fit";
import { estimatesOf, type LogNormalEstimates } from "./survival/log-normal-variance";
import { type MedianTime, medianTimeAt } from "./survival/median-time";
import { patientsOf } from "./survival/patients-of";
import { type SpanRows, spansOf } from "./survival/require-spans";
import { type DesignInput, standardisedDesign } from "./survival/standardised-design";
import { thresholds } from "./thresholds";

/** One coefficient on the log of time, and what it does to the time itself: e to its power, a ratio of times. */
export interface TimeCoefficient {
  readonly name: string;
  readonly estimate: number;
  readonly se: number | null;
  readonly modelSe: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly statistic: number | null;
  readonly p: number | null;
  readonly timeRatio: number;
  readonly timeRatioLower: number | null;
  readonly timeRatioUpper: number | null;
}

/** `estimate`, `se`, `lower`, `upper`: the median time at the covariates `at`, in the unit of the times. */
export interface TimeModel extends Omit<Estimate, "estimate" | "se" | "lower" | "upper">, MedianTime {
  readonly at: readonly number[];
  readonly coefficients: readonly TimeCoefficient[];
  /** σ: the standard deviation of the log of time. */
  readonly scale: number;
  readonly logLikelihood: number;
  /** Robust covariances of the coefficients and, last, of log σ; rows. Null below three patients. */
  readonly covariance: readonly (readonly number[])[] | null;
  readonly events: number;
  readonly iterations: number;
}

export interface TimeModelInput extends SpanRows, DesignInput {
  /** Covariates at which the median is asked for; their means unless said. */
  readonly at?: readonly number[] | undefined;
  readonly confidence?: number;
}

/**
 * Log-normal accelerated failure time model: log(time) = β₀ + Σ βⱼ·covariate + σ·normal error, by maximum likelihood.
 * Rows may be exact, not yet over (right-censored) or known to lie between two days; covariates work as ratios of time.
 * Variance by patient: sandwich of the scores, as R's `survreg(dist = "lognormal", cluster)`; normal quantiles.
 * Kalbfleisch, Prentice 2002, The Statistical Analysis of Failure Time Data, ch. 3; Lin, Wei 1989, J Am Stat Assoc 84:1074-1078.
 * @throws RangeError, TypeError on rows or covariates that don't fit together, are constant or explain each other, on fewer events than
 *   parameters, and when no finite estimate exists
 * @example timeModel({ times: [80, 100, 125], event: [1, 1, 1] }).estimate.toFixed(6) // => "100.000000"
 */
export function timeModel({ confidence = 0.95, at, design, names, ...rows }: TimeModelInput): TimeModel {
  requireConfidence("timeModel", confidence);
  const spans = spansOf("timeModel", rows);
  requirePositiveTimes(spans.after, spans.by);
  const n = spans.after.length;
  const columns = standardisedDesign("timeModel", { design, names }, n);
  const events = spans.by.reduce((count, by) => count + (by === Infinity ? 0 : 1), 0);
  if (events <= columns.k)
    throw new RangeError(`timeModel requires at least ${columns.k + 1} events for ${columns.k + 1} parameters, received ${events}`);
  const place = at ?? Array.from(columns.centre);
  if (place.length !== columns.k - 1)
    throw new RangeError(`timeModel requires at with ${columns.k - 1} covariates, received ${place.length}`);
  const logs = logSpans("timeModel", spans);
  const fit = fitLogNormal("timeModel", logs, columns);
  const patients = patientsOf(rows.patient, n);
  const estimates = estimatesOf(fit, logs, columns, patients);
  const enough = patients.count >= thresholds.patientsForInterval && patients.count > columns.k + 1;
  const z = enough ? normalQuantile(0.5 + confidence / 2) : null;
  return {
    ...medianTimeAt(estimates, place, z),
    df: null,
    at: place,
    coefficients: ["(intercept)", ...columns.names].map((name, j) => coefficient(name, j, estimates, z)),
    scale: Math.exp(estimates.parameters[columns.k] as number),
    logLikelihood: fit.logLikelihood - logJacobian(logs, spans.after, spans.by),
    covariance: z === null ? null : asRows(estimates.robust, columns.k + 1),
    events,
    iterations: fit.iterations,
    n,
    patients: rows.patient ? patients.count : null,
    method: `log-normal accelerated failure time model, robust variance ${rows.patient ? "by patient" : "by row"}`,
    convention: "sandwich without a factor for few patients, normal quantiles",
    notes: notesOf(enough, patients.count, columns.k + 2),
  };
}

function requirePositiveTimes(after: Float64Array, by: Float64Array): void {
  const bad = by.findIndex((end, i) => end === 0 || (end === Infinity && after[i] === 0));
  if (bad >= 0) throw new RangeError(`timeModel requires times above zero, received 0 at ${bad}`);
}

/** Densities are of the time, not of its standardised log: Σ over exact rows of log(time) + log(spread). */
function logJacobian({ spread }: LogSpans, after: Float64Array, by: Float64Array): number {
  return after.reduce((sum, time, i) => (time === by[i] ? sum + Math.log(time) + Math.log(spread) : sum), 0);
}

function coefficient(name: string, j: number, { parameters, robust, modelBased }: LogNormalEstimates, z: number | null): TimeCoefficient {
  const size = parameters.length;
  const estimate = parameters[j] as number;
  const modelSe = Math.sqrt(modelBased[j * size + j] as number);
  const none = { se: null, lower: null, upper: null, statistic: null, p: null, timeRatioLower: null, timeRatioUpper: null };
  if (z === null) return { name, estimate, modelSe, timeRatio: Math.exp(estimate), ...none };
  const se = Math.sqrt(robust[j * size + j] as number);
  const [lower, upper] = [estimate - z * se, estimate + z * se];
  const test = { statistic: estimate / se, p: normalTwoSided(estimate / se) };
  const ratios = { timeRatio: Math.exp(estimate), timeRatioLower: Math.exp(lower), timeRatioUpper: Math.exp(upper) };
  return { name, estimate, se, modelSe, lower, upper, ...test, ...ratios };
}

function asRows(matrix: Float64Array, size: number): number[][] {
  return Array.from({ length: size }, (_, i) => Array.from(matrix.subarray(i * size, (i + 1) * size)));
}

function notesOf(enough: boolean, patients: number, needed: number): readonly Note[] {
  return enough ? [] : [{ code: "too-few-for-interval", patients, needed: Math.max(needed, thresholds.patientsForInterval) }];
}
