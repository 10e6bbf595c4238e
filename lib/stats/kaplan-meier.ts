import type { PatientIndex } from "./cluster/patients";
import { normalQuantile } from "./distributions";
import type { Note } from "./notes";
import type { Estimate } from "./record";
import { requireConfidence, requirePositive } from "./require";
import { type LimitScale, limitScales, limitsOfShare } from "./survival/curve-limits";
import { timeAtLevel } from "./survival/curve-quantile";
import { patientsOf } from "./survival/patients-of";
import { requireTimeRows, type TimeRows } from "./survival/require-rows";
import { restrictedMean } from "./survival/restricted-mean";
import { type RiskSteps, riskSteps } from "./survival/risk-steps";
import { survivalAtSteps, survivalErrors } from "./survival/survival-curve";
import { thresholds } from "./thresholds";

/** A curve as columns, one entry a distinct time (of events and of censorings). */
export interface SurvivalCurve {
  readonly time: readonly number[];
  readonly atRisk: readonly number[];
  readonly events: readonly number[];
  readonly censored: readonly number[];
  readonly survival: readonly number[];
  readonly se: readonly (number | null)[];
  readonly lower: readonly (number | null)[];
  readonly upper: readonly (number | null)[];
}

export interface MeanToTau {
  readonly tau: number;
  readonly estimate: number | null;
  readonly se: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** `estimate`, `lower`, `upper`: the median with its Brookmeyer–Crowley limits, null where not reached. */
export interface KaplanMeier extends Estimate {
  readonly events: number;
  readonly quartiles: { readonly lower: number | null; readonly upper: number | null };
  readonly curve: SurvivalCurve;
  readonly restrictedMean: MeanToTau | null;
}

export interface KaplanMeierInput extends TimeRows {
  readonly confidence?: number;
  readonly limits?: LimitScale;
  /** Also the mean up to this time, in the unit of the times. */
  readonly tau?: number | undefined;
}

/**
 * Kaplan–Meier curve, median and quartiles, and the mean restricted to `tau`.
 * Events come before censorings of the same time; times within 1e-9 of each other are the same; a row with `entry` is at risk after it.
 * Standard error: infinitesimal jackknife summed within patients, as R's `survfit(cluster)`; one row a patient gives Greenwood's.
 * Kaplan, Meier 1958, J Am Stat Assoc 53:457-481; limits of the median: Brookmeyer, Crowley 1982, Biometrics 38:29-41.
 * @throws RangeError, TypeError when the rows are not as `TimeRows` says or the confidence is not between 0 and 1
 * @example kaplanMeier({ times: [3, 3, 5, 8], event: [1, 1, 1, 1] }).estimate // => 4
 * @example kaplanMeier({ times: [5, 9, 12], event: [0, 0, 0] }).estimate // => null
 */
export function kaplanMeier({ confidence = 0.95, limits = "log-log", tau, ...rows }: KaplanMeierInput): KaplanMeier {
  requireTimeRows("kaplanMeier", rows);
  requireConfidence("kaplanMeier", confidence);
  if (!limitScales.includes(limits)) throw new RangeError(`kaplanMeier requires limits ${limitScales.join(", ")}, received another`);
  if (tau !== undefined) requirePositive("kaplanMeier", "tau", tau);
  const steps = riskSteps(rows);
  const patients = patientsOf(rows.patient, rows.times.length);
  const survival = survivalAtSteps(steps);
  const z = normalQuantile(0.5 + confidence / 2);
  const curve = curveOf(steps, survival, errorsOf(steps, survival, rows, patients), z, limits);
  const mean = tau === undefined ? null : meanToTau(steps, survival, rows, patients, tau, z);
  const estimate = timeAtLevel(curve.time, survival, 0.5);
  return {
    estimate,
    se: null,
    df: null,
    lower: timeAtLevel(curve.time, curve.lower, 0.5),
    upper: timeAtLevel(curve.time, curve.upper, 0.5),
    quartiles: { lower: timeAtLevel(curve.time, survival, 0.75), upper: timeAtLevel(curve.time, survival, 0.25) },
    n: rows.times.length,
    patients: rows.patient ? patients.count : null,
    events: steps.events.reduce((sum, d) => sum + d, 0),
    curve,
    restrictedMean: mean,
    method: `Kaplan–Meier, ${rows.patient ? "robust variance by patient" : "Greenwood variance"}, ${limits} limits, Brookmeyer–Crowley limits of the median`,
    convention: "events before censorings; flat at exactly one half: middle of the flat stretch, its start when the curve falls no further",
    notes: notesOf(estimate, patients, mean),
  };
}

/** Below three patients the curve stands without its errors. */
function errorsOf(steps: RiskSteps, survival: Float64Array, rows: TimeRows, patients: PatientIndex): Float64Array | null {
  return patients.count < thresholds.patientsForInterval ? null : survivalErrors(steps, survival, rows.event, patients);
}

function curveOf(steps: RiskSteps, survival: Float64Array, errors: Float64Array | null, z: number, scale: LimitScale): SurvivalCurve {
  const lower: (number | null)[] = new Array(survival.length).fill(null);
  const upper: (number | null)[] = new Array(survival.length).fill(null);
  const se: (number | null)[] = new Array(survival.length).fill(null);
  for (let step = 0; errors && step < survival.length; step++) {
    const share = survival[step] as number;
    if (share > 0) se[step] = errors[step] as number;
    const [low, high] = limitsOfShare(share, errors[step] as number, z, scale);
    lower[step] = low;
    upper[step] = high;
  }
  const { time, atRisk, events, censored } = steps;
  return {
    time: Array.from(time),
    atRisk: Array.from(atRisk),
    events: Array.from(events),
    censored: Array.from(censored),
    survival: Array.from(survival),
    se,
    lower,
    upper,
  };
}

function meanToTau(steps: RiskSteps, survival: Float64Array, rows: TimeRows, patients: PatientIndex, tau: number, z: number): MeanToTau {
  const mean = restrictedMean(steps, survival, rows.event, patients, tau);
  if (mean === null) return { tau, estimate: null, se: null, lower: null, upper: null };
  if (patients.count < thresholds.patientsForInterval) return { tau, estimate: mean.estimate, se: null, lower: null, upper: null };
  const se = Math.sqrt(mean.influence.reduce((sum, one) => sum + one * one, 0));
  return { tau, estimate: mean.estimate, se, lower: mean.estimate - z * se, upper: mean.estimate + z * se };
}

function notesOf(median: number | null, patients: PatientIndex, mean: MeanToTau | null): readonly Note[] {
  const notes: Note[] = [];
  if (patients.count < thresholds.patientsForInterval) {
    notes.push({ code: "too-few-for-interval", patients: patients.count, needed: thresholds.patientsForInterval });
  }
  if (median === null) notes.push({ code: "not-reached", what: "The median" });
  if (mean && mean.estimate === null) notes.push({ code: "not-estimable", because: "the restricted mean reaches beyond the last time" });
  return notes;
}
