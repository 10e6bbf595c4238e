import { disagreements, type KappaWeights, kappaOf } from "./agreement/kappa-of";
import { indexPatients, type PatientIndex } from "./cluster/patients";
import type { Note } from "./notes";
import type { Estimate, PatientLabels } from "./record";
import { requireConfidence, requireCount, requireSameLength, requireSome } from "./require";
import { seededRandom } from "./resample/random";
import { quantileSorted, sortedCopy } from "./summary/order";
import { thresholds } from "./thresholds";

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
 * @param first class a row, as its number from 0 in rising order; second: the same rows rated again
 * @param classes how many classes there are, used or not
 * @throws RangeError with fewer than two classes, a class outside them, or unequal lengths
 * @example weightedKappa({ first: [0, 1, 2, 2], second: [0, 1, 2, 1], patient: [1, 2, 3, 4], classes: 3, seed: 1 }).estimate?.toFixed(3) // => "0.800"
 */
export function weightedKappa({
  first,
  second,
  patient,
  classes,
  seed,
  weights = "quadratic",
  resamples = 1999,
  confidence = 0.95,
}: {
  first: readonly number[];
  second: readonly number[];
  patient: PatientLabels;
  classes: number;
  seed: number;
  weights?: KappaWeights;
  resamples?: number;
  confidence?: number;
}): WeightedKappa {
  requireRatings(first, second, patient, classes);
  requireConfidence("weightedKappa", confidence);
  requireCount("weightedKappa", "resamples", resamples, 1);
  const index = indexPatients(patient);
  const tables = tablesOfPatients(first, second, index, classes);
  const table = sumOf(tables, tables.keys());
  const apart = disagreements(classes, weights);
  const { kappa, seen, expected } = kappaOf(table, apart, classes);
  const enough = index.count >= thresholds.patientsForBootstrap;
  const notes: Note[] = [];
  if (!enough) notes.push({ code: "too-few-for-interval", patients: index.count, needed: thresholds.patientsForBootstrap });
  if (kappa === null) notes.push({ code: "constant-values" });
  const limits = enough && kappa !== null ? resampled(tables, apart, classes, { seed, resamples, confidence }) : noLimits;
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
    notes,
  };
}

const noLimits = { se: null, lower: null, upper: null } as const;

function resampled(
  tables: readonly Float64Array[],
  apart: Float64Array,
  classes: number,
  { seed, resamples, confidence }: { seed: number; resamples: number; confidence: number },
) {
  const random = seededRandom(seed);
  const kappas: number[] = [];
  for (let b = 0; b < resamples; b++) {
    const drawn = tables.map(() => random.below(tables.length));
    const { kappa } = kappaOf(sumOf(tables, drawn), apart, classes);
    if (kappa !== null) kappas.push(kappa); // a resample in one class only says nothing about agreement
  }
  if (kappas.length < 2) return noLimits;
  const sorted = sortedCopy(kappas);
  const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length;
  const se = Math.sqrt(sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (sorted.length - 1));
  const tail = (1 - confidence) / 2;
  return { se, lower: quantileSorted(sorted, tail), upper: quantileSorted(sorted, 1 - tail) };
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

function sumOf(tables: readonly Float64Array[], which: Iterable<number>): Float64Array {
  const sum = new Float64Array((tables[0] as Float64Array).length);
  for (const code of which) {
    (tables[code] as Float64Array).forEach((count, at) => {
      sum[at] = (sum[at] as number) + count;
    });
  }
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
