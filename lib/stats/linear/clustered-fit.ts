import type { Matrix } from "ml-matrix";
import { type PatientIndex, rowsOfPatients } from "../cluster/patients";
import { type Adjusted, adjustedByGram, adjustedByRows } from "./adjusted";

/**
 * What CR2 needs of a fit, patient by patient, in the coordinates of the orthonormal columns Q of the (weighted) design.
 * Nothing grows with the square of all rows.
 */
export interface ClusteredFit {
  readonly p: number;
  readonly parts: readonly Adjusted[];
}

/**
 * @param q n × p orthonormal columns
 * @param residuals n residuals divided by the root of their working variance, as the rows of q are
 * @param variance n working variances, up to a factor
 */
export function clusteredFit(q: Matrix, residuals: Float64Array, variance: Float64Array, index: PatientIndex): ClusteredFit {
  const parts = rowsOfPatients(index).map((rows) => {
    if (rows.every((row) => variance[row] === variance[rows[0] as number]))
      return adjustedByGram(gramOf(q, rows), scoreOf(q, rows, residuals), q.columns);
    const theta = Float64Array.from(rows, (row) => variance[row] as number);
    const own = Float64Array.from(rows, (row) => residuals[row] as number);
    return adjustedByRows(
      Array.from(rows, (row) => q.getRow(row)),
      own,
      theta,
    );
  });
  return { p: q.columns, parts };
}

/** Fit of known Gram matrices and scores of the patients, equal working variances. */
export function fitOf(p: number, grams: readonly Float64Array[], scores: readonly Float64Array[]): ClusteredFit {
  return { p, parts: grams.map((gram, c) => adjustedByGram(gram, scores[c] as Float64Array, p)) };
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
