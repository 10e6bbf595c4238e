import { sumByPatient } from "./cluster/patients";
import { normalQuantile, normalTwoSided } from "./distributions";
import type { Note } from "./notes";
import type { Estimate } from "./record";
import { requireConfidence } from "./require";
import { sandwich } from "./survival/cholesky";
import { fitCox } from "./survival/cox-fit";
import { coxScores } from "./survival/cox-scores";
import type { CoxProblem, CoxTies } from "./survival/cox-sums";
import { sumOfOuterProducts } from "./survival/log-rank-sums";
import { patientsOf } from "./survival/patients-of";
import { requireTimeRows, type TimeRows } from "./survival/require-rows";
import { riskSteps } from "./survival/risk-steps";
import { type DesignInput, standardisedDesign } from "./survival/standardised-design";
import { thresholds } from "./thresholds";

/** One covariate: its effect on the log of the hazard, and the hazard ratio. */
export interface HazardCoefficient {
  readonly name: string;
  readonly estimate: number;
  readonly se: number | null;
  readonly modelSe: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly statistic: number | null;
  readonly p: number | null;
  readonly hazardRatio: number;
  readonly hazardRatioLower: number | null;
  readonly hazardRatioUpper: number | null;
}

/** `estimate`, `se`, `lower`, `upper`: those of the first covariate, on the log scale. */
export interface Cox extends Estimate {
  readonly coefficients: readonly HazardCoefficient[];
  readonly logLikelihood: number;
  readonly nullLogLikelihood: number;
  readonly events: number;
  readonly iterations: number;
}

export interface CoxInput extends TimeRows, DesignInput {
  readonly ties?: CoxTies;
  readonly confidence?: number;
}

/**
 * Proportional hazards regression with errors by patient (sandwich of the score residuals, as R's `coxph(cluster)`); rows may enter late.
 * Healing has no proportional hazards as a rule: asked for only, never chosen; the time model compares healing.
 * Cox 1972, J R Stat Soc B 34:187-220; Lin, Wei 1989, J Am Stat Assoc 84:1074-1078.
 * @throws RangeError, TypeError on rows or covariates that don't fit together, and when no finite estimate exists
 * @example cox({ times: [2, 3, 4, 5], event: [1, 1, 1, 1], design: [[0], [1], [0], [1]] }).events // => 4
 */
export function cox({ ties = "efron", confidence = 0.95, design, names, ...rows }: CoxInput): Cox {
  requireTimeRows("cox", rows);
  requireConfidence("cox", confidence);
  if (ties !== "efron" && ties !== "breslow") throw new RangeError("cox requires ties efron or breslow, received another");
  const columns = standardisedDesign("cox", { design, names }, rows.times.length);
  const p = columns.k - 1;
  if (p === 0) throw new RangeError("cox requires at least one covariate, received none");
  const steps = riskSteps(rows);
  const events = steps.events.reduce((sum, d) => sum + d, 0);
  if (events < p) throw new RangeError(`cox requires at least ${p} events for ${p} covariates, received ${events}`);
  const problem: CoxProblem = { steps, event: rows.event, design: columns, ties };
  const fit = fitCox("cox", problem);
  const patients = patientsOf(rows.patient, rows.times.length);
  const enough = patients.count >= thresholds.patientsForInterval && patients.count > p;
  const scores = coxScores(problem, fit.beta);
  const byPatient = Array.from({ length: p }, (_, j) => sumByPatient(patients, everyNth(scores, j, p)));
  const robust = sandwich(fit.inverseInformation, sumOfOuterProducts(interleaved(byPatient), p), p);
  const z = enough ? normalQuantile(0.5 + confidence / 2) : null;
  const coefficients = columns.names.map((name, j) => {
    const unit = columns.spread[j] as number;
    const [variance, modelVariance] = [robust[j * p + j] as number, fit.inverseInformation[j * p + j] as number];
    return coefficient(name, (fit.beta[j] as number) / unit, Math.sqrt(variance) / unit, Math.sqrt(modelVariance) / unit, z);
  });
  const { estimate, se, lower, upper } = coefficients[0] as HazardCoefficient;
  return {
    ...{ estimate, se, lower, upper, df: null, coefficients },
    logLikelihood: fit.logLikelihood,
    nullLogLikelihood: fit.nullLogLikelihood,
    events,
    iterations: fit.iterations,
    n: rows.times.length,
    patients: rows.patient ? patients.count : null,
    method: `Cox proportional hazards regression, robust variance ${rows.patient ? "by patient" : "by row"}`,
    convention: `${ties === "efron" ? "Efron" : "Breslow"} ties, normal quantiles`,
    notes: notesOf(enough, patients.count, p + 1),
  };
}

function everyNth(values: Float64Array, from: number, width: number): Float64Array {
  return Float64Array.from({ length: values.length / width }, (_, row) => values[row * width + from] as number);
}

function interleaved(columns: readonly Float64Array[]): Float64Array {
  const width = columns.length;
  return Float64Array.from(
    { length: width * (columns[0] as Float64Array).length },
    (_, i) => columns[i % width]?.[Math.floor(i / width)] as number,
  );
}

function coefficient(name: string, estimate: number, se: number, modelSe: number, z: number | null): HazardCoefficient {
  const none = { se: null, lower: null, upper: null, statistic: null, p: null, hazardRatioLower: null, hazardRatioUpper: null };
  if (z === null) return { name, estimate, modelSe, hazardRatio: Math.exp(estimate), ...none };
  const [lower, upper] = [estimate - z * se, estimate + z * se];
  const test = { statistic: estimate / se, p: normalTwoSided(estimate / se) };
  const ratios = { hazardRatio: Math.exp(estimate), hazardRatioLower: Math.exp(lower), hazardRatioUpper: Math.exp(upper) };
  return { name, estimate, se, modelSe, lower, upper, ...test, ...ratios };
}

function notesOf(enough: boolean, patients: number, needed: number): readonly Note[] {
  return enough ? [] : [{ code: "too-few-for-interval", patients, needed: Math.max(needed, thresholds.patientsForInterval) }];
}
