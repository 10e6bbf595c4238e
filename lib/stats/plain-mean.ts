import { requireRows } from "./cluster/check-rows";
import { indexPatients } from "./cluster/patients";
import type { Estimate, PatientLabels } from "./record";
import { requireConfidence } from "./require";
import { meanWithT } from "./summary/mean-with-t";

/**
 * The mean as if every value came from another patient: SD/√n, t on n − 1 df. Too narrow when patients have several bones;
 * it stands beside the clustered one because that is what most papers print.
 * @param patient left out when every value is another patient
 * @throws RangeError without values, with unequal lengths or a confidence outside 0 to 1; TypeError when a value is not finite
 * @example plainMean({ values: [30, 32, 34] }).se?.toFixed(4) // => "1.1547"
 */
export function plainMean({
  values,
  patient,
  confidence = 0.95,
}: {
  values: readonly number[];
  patient?: PatientLabels;
  confidence?: number;
}): Estimate & { readonly estimate: number } {
  requireRows("plainMean", values, patient ?? values);
  requireConfidence("plainMean", confidence);
  const patients = patient ? indexPatients(patient).count : values.length;
  return { ...meanWithT(values, patients, confidence), n: values.length, patients, method: "mean, t, every value as another patient" };
}
