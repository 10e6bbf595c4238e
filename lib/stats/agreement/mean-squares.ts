import { type PatientIndex, sumByPatient } from "../cluster/patients";

/** Sums of squares of one-way analysis of variance by patient. */
export interface MeanSquares {
  readonly means: Float64Array;
  readonly between: number;
  readonly within: number;
}

/** @param residuals values less their common mean */
export function sumsOfSquaresByPatient(residuals: Float64Array, index: PatientIndex): MeanSquares {
  const means = sumByPatient(index, residuals).map((sum, code) => sum / (index.rows[code] as number));
  let within = 0;
  residuals.forEach((residual, i) => {
    within += (residual - (means[index.codes[i] as number] as number)) ** 2;
  });
  const between = means.reduce((sum, mean, code) => sum + (index.rows[code] as number) * mean * mean, 0);
  return { means, between, within };
}
