import { disagreements, type KappaWeights, kappaOf } from "./agreement/kappa-of";
import { indexPatients, type PatientIndex } from "./cluster/patients";
import type { Note } from "./notes";
import type { Estimate, PatientLabels } from "./record";
import { requireConfidence, requireCount, requireSameLength, requireSome } from "./require";
import { bootstrapReplicates, percentileInterval } from "./resample/bootstrap";
import { thresholds } from "./thresholds";

export interface WeightedKappaInput {
  /** Class a row, as its number from 0 in rising order; `second`: the same rows rated again. */
  readonly first: readonly number[];
  readonly second: readonly number[];
  readonly patient: PatientLabels;
  /** How many classes there are, used or not. */
  readonly classes: number;
  readonly seed: number;
  readonly weights?: KappaWeights;
  readonly repeats?: number;
  readonly confidence?: number;
}

export interface WeightedKappa extends Estimate {
  /** Weighted disagreement seen, and expected from the margins. */
  readonly seen: number;
  readonly expected: number;
  /** Rows rated by class, first rating down, second across. */
  readonly table: readonly (readonly number[])[];
}

/**
 * Agreement of two ratings in ordered classes beyond chance, with a percentile interval from resampled patients (from 20 patients).
 * Null when the margins leave no disagreement possible: both put every row in one class.
 * Cohen J. Psychol Bull 1968;70:213-220; interval: Efron B, Tibshirani RJ. An Introduction to the Bootstrap 1993, chapter 13, whole patients.
 * @throws RangeError with fewer than two classes, a class outside them, or unequal lengths
 * @example weightedKappa({ first: [0, 1, 2, 2], second: [0, 1, 2, 1], patient: [1, 2, 3, 4], classes: 3, seed: 1 }).estimate?.toFixed(3) // => "0.800"
 */
export function weightedKappa({ weights = "quadratic", repeats = 9999, confidence = 0.95, ...rated }: WeightedKappaInput): WeightedKappa {
  const { first, second, patient, classes, seed } = rated;
  requireRatings(first, second, patient, classes);
  requireConfidence("weightedKappa", confidence);
  requireCount("weightedKappa", "repeats", repeats, 1);
  const index = indexPatients(patient);
  const tables = tablesOfPatients(first, second, index, classes);
  const table = sumOf(tables, new Int32Array(index.count).fill(1));
  const apart = disagreements(classes, weights);
  const { kappa, seen, expected } = kappaOf(table, apart, classes);
  const enough = index.count >= thresholds.patientsForBootstrap;
  const notes: Note[] = [];
  if (!enough) notes.push({ code: "too-few-for-interval", patients: index.count, needed: thresholds.patientsForBootstrap });
  if (kappa === null) notes.push({ code: "constant-values" });
  // A resample in one class only says nothing about agreement and counts as failed.
  const ofDraw = (times: Int32Array) => kappaOf(sumOf(tables, times), apart, classes).kappa;
  const limits =
    enough && kappa !== null
      ? percentileInterval(bootstrapReplicates({ patients: index.count, repeats, seed, statistic: ofDraw }), confidence)
      : { se: null, lower: null, upper: null };
  return {
    estimate: kappa,
    ...limits,
    df: null,
    seen,
    expected,
    table: Array.from({ length: classes }, (_, i) => Array.from(table.subarray(i * classes, (i + 1) * classes))),
    n: first.length,
    patients: index.count,
    method: `${weights === "unweighted" ? "kappa" : `weighted kappa (${weights})`}, percentile bootstrap of patients`,
    convention: "limits at (B + 1)p of the replicates",
    notes,
  };
}

function tablesOfPatients(first: readonly number[], second: readonly number[], { codes, count }: PatientIndex, classes: number) {
  const tables = Array.from({ length: count }, () => new Float64Array(classes * classes));
  codes.forEach((code, i) => {
    const table = tables[code] as Float64Array;
    const at = (first[i] as number) * classes + (second[i] as number);
    table[at] = (table[at] as number) + 1;
  });
  return tables;
}

/** Table of the patients, each as often as `times` says. */
function sumOf(tables: readonly Float64Array[], times: ArrayLike<number>): Float64Array {
  const sum = new Float64Array((tables[0] as Float64Array).length);
  tables.forEach((table, code) => {
    const often = times[code] as number;
    for (let at = 0; often > 0 && at < sum.length; at++) sum[at] = (sum[at] as number) + often * (table[at] as number);
  });
  return sum;
}

function requireRatings(first: readonly number[], second: readonly number[], patient: PatientLabels, classes: number): void {
  requireSome("weightedKappa", "row", first.length);
  requireCount("weightedKappa", "classes", classes, 2);
  requireSameLength("weightedKappa", "first", first.length, "second", second.length);
  requireSameLength("weightedKappa", "first", first.length, "patient", patient.length);
  for (const one of [...first, ...second]) {
    if (!Number.isInteger(one) || one < 0 || one >= classes) {
      throw new RangeError(`weightedKappa requires classes numbered 0 to ${classes - 1}, received ${String(one)}`);
    }
  }
}
