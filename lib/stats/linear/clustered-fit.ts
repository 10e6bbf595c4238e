import type { Matrix } from "ml-matrix";
import { type PatientIndex, rowsOfPatients } from "../cluster/patients";
import { adjustByGram, adjustByRows, type Parts } from "./adjusted";

/** What CR2 needs of a fit: the parts of all patients. */
export interface ClusteredFit extends Parts {
  readonly patients: number;
}

function emptyFit(p: number, patients: number): ClusteredFit {
  const matrices = () => new Float64Array(patients * p * p);
  return { p, patients, scores: new Float64Array(patients * p), squares: matrices(), crosses: matrices() };
}

/**
 * @param q n × p orthonormal columns
 * @param residuals n residuals divided by the root of their working variance, as the rows of q are
 * @param variance n working variances, up to a factor
 */
export function clusteredFit(q: Matrix, residuals: Float64Array, variance: Float64Array, index: PatientIndex): ClusteredFit {
  const fit = emptyFit(q.columns, index.count);
  rowsOfPatients(index).forEach((rows, patient) => {
    const of = (column: Float64Array) => Float64Array.from(rows, (row) => column[row] as number);
    const even = rows.every((row) => variance[row] === variance[rows[0] as number]);
    if (even) adjustByGram(fit, patient, gramOf(q, rows), scoreOf(q, rows, residuals));
    else adjustByRows(fit, patient, { lines: Array.from(rows, (row) => q.getRow(row)), residuals: of(residuals), theta: of(variance) });
  });
  return fit;
}

/** Fit of known Gram matrices and scores of the patients, equal working variances. */
export function fitOf(p: number, grams: readonly Float64Array[], scores: readonly Float64Array[]): ClusteredFit {
  const fit = emptyFit(p, grams.length);
  grams.forEach((gram, patient) => {
    adjustByGram(fit, patient, gram, scores[patient] as Float64Array);
  });
  return fit;
}

function gramOf(q: Matrix, rows: Int32Array): Float64Array {
  const p = q.columns;
  const gram = new Float64Array(p * p);
  for (const row of rows) {
    for (let j = 0; j < p; j++) {
      for (let k = 0; k < p; k++) gram[j * p + k] = (gram[j * p + k] as number) + q.get(row, j) * q.get(row, k);
    }
  }
  return gram;
}

function scoreOf(q: Matrix, rows: Int32Array, residuals: Float64Array): Float64Array {
  const score = new Float64Array(q.columns);
  for (const row of rows) {
    for (let j = 0; j < q.columns; j++) score[j] = (score[j] as number) + q.get(row, j) * (residuals[row] as number);
  }
  return score;
}
