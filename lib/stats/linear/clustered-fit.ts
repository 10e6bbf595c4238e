import { type PatientIndex, rowsOfPatients } from "../cluster/patients";
import { adjustByGram, adjustByRows, type Parts } from "./adjusted";
import type { Columns } from "./least-squares";

/** What CR2 needs of a fit: the parts of all patients. */
export interface ClusteredFit extends Parts {
  readonly patients: number;
}

/** Gram matrices of the patients' rows of Q, p × p by rows a patient, and QᵀR of their residuals, p a patient. */
export interface PatientSums {
  readonly grams: Float64Array;
  readonly scores: Float64Array;
}

function emptyFit(p: number, patients: number): ClusteredFit {
  const matrices = () => new Float64Array(patients * p * p);
  return { p, patients, scores: new Float64Array(patients * p), squares: matrices(), crosses: matrices() };
}

/**
 * @param q p orthonormal columns
 * @param residuals n residuals divided by the root of their working variance, as the rows of q are
 * @param variance n working variances, up to a factor
 */
export function clusteredFit(q: Columns, residuals: Float64Array, variance: Float64Array, index: PatientIndex): ClusteredFit {
  const even = evenPatients(variance, index);
  const fit = fitOf(q.length, index.count, sumsOf(q, residuals, index), even);
  if (even.every((is) => is === 1)) return fit;
  rowsOfPatients(index).forEach((rows, patient) => {
    if (even[patient] === 1) return;
    const of = (column: Float64Array) => Float64Array.from(rows, (row) => column[row] as number);
    const lines = Array.from(rows, (row) => Float64Array.from(q, (column) => column[row] as number));
    adjustByRows(fit, patient, { lines, residuals: of(residuals), theta: of(variance) });
  });
  return fit;
}

/** Fit of patients with equal working variances; one who isn't `even` is left to be filled in. */
export function fitOf(p: number, patients: number, { grams, scores }: PatientSums, even?: Uint8Array): ClusteredFit {
  const fit = emptyFit(p, patients);
  for (let patient = 0; patient < patients; patient++) if (even?.[patient] !== 0) adjustByGram(fit, patient, grams, scores);
  return fit;
}

/** 1: all rows of the patient have the same working variance. */
function evenPatients(variance: Float64Array, { codes, count }: PatientIndex): Uint8Array {
  const even = new Uint8Array(count).fill(1);
  const first = new Float64Array(count);
  for (let i = 0; i < codes.length; i++) {
    const code = codes[i] as number;
    // a working variance is above nothing
    if (first[code] === 0) first[code] = variance[i] as number;
    else if (first[code] !== variance[i]) even[code] = 0;
  }
  return even;
}

function sumsOf(q: Columns, residuals: Float64Array, { codes, count }: PatientIndex): PatientSums {
  const p = q.length;
  const grams = new Float64Array(count * p * p);
  const scores = new Float64Array(count * p);
  q.forEach((column, j) => {
    for (let i = 0; i < codes.length; i++) {
      const at = (codes[i] as number) * p + j;
      scores[at] = (scores[at] as number) + (column[i] as number) * (residuals[i] as number);
    }
    q.forEach((other, k) => {
      for (let i = 0; i < codes.length; i++) {
        const at = ((codes[i] as number) * p + j) * p + k;
        grams[at] = (grams[at] as number) + (column[i] as number) * (other[i] as number);
      }
    });
  });
  return { grams, scores };
}
