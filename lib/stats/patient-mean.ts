import { requireRows } from "./cluster/check-rows";
import { indexPatients, sumByPatient } from "./cluster/patients";
import type { Estimate, PatientLabels } from "./record";
import { requireConfidence } from "./require";
import { meanWithT } from "./summary/mean-with-t";
import { powerOfTwoScale } from "./summary/scale";

/**
 * The mean of the patients' own means, each patient counting once, with Student's t on patients − 1 df.
 * @throws RangeError without values, with unequal lengths or a confidence outside 0 to 1; TypeError when a value is not finite
 * @example patientMean({ values: [30, 34, 41, 36], patient: ["a", "a", "b", "c"] }).estimate.toFixed(4) // => "36.3333"
 */
export function patientMean({
  values,
  patient,
  confidence = 0.95,
}: {
  values: readonly number[];
  patient: PatientLabels;
  confidence?: number;
}): Estimate & { readonly estimate: number } {
  requireRows("patientMean", values, patient);
  requireConfidence("patientMean", confidence);
  const means = meansByPatient(values, patient);
  return { ...meanWithT(means, means.length, confidence), n: values.length, patients: means.length, method: "mean of patient means, t" };
}

/** One mean a patient, in the order of first rows. */
export function meansByPatient(values: readonly number[], patient: PatientLabels): number[] {
  const index = indexPatients(patient);
  // A patient's mean is taken from its first value on, so that equal values keep that very value as their mean.
  const first = new Float64Array(index.count).fill(Number.NaN);
  const scale = powerOfTwoScale(values);
  for (let i = 0; i < values.length; i++) {
    const code = index.codes[i] as number;
    if (Number.isNaN(first[code])) first[code] = (values[i] as number) / scale;
  }
  const rest = sumByPatient(
    index,
    values.map((value, i) => value / scale - (first[index.codes[i] as number] as number)),
  );
  return Array.from(rest, (sum, code) => ((first[code] as number) + sum / (index.rows[code] as number)) * scale);
}
