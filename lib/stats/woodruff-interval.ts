import { requireRows } from "./cluster/check-rows";
import type { Note } from "./notes";
import type { PatientLabels } from "./record";
import { requireConfidence, requireProbability } from "./require";
import { effectiveNumber } from "./shares/effective-number";
import { scoreInterval } from "./shares/score-interval";
import { quantileSorted, sortedCopy } from "./summary/order";
import { thresholds } from "./thresholds";

/**
 * A quantile of clustered values with the interval that lies between two other quantiles: those at the limits of the share of values
 * up to it, by Wilson's interval on the effective number of cases. One pass, where patientBootstrap draws every patient thousands of times.
 * Woodruff RS. J Am Stat Assoc 1952;47:635-646; the effective number as in wilsonClustered.
 * @param p which quantile, 0.5 for the median, above 0 and below 1; type 7 of Hyndman and Fan
 * @throws RangeError without values, with unequal lengths, or p outside 0 to 1; TypeError when a value isn't finite
 * @example woodruffInterval({ values: [1, 2, 3, 10], patient: [1, 1, 2, 3] }).estimate // => 2.5
 */
export function woodruffInterval({
  values,
  patient,
  p = 0.5,
  confidence = 0.95,
}: {
  values: readonly number[];
  patient: PatientLabels;
  p?: number;
  confidence?: number;
}) {
  requireRows("woodruffInterval", values, patient);
  requireProbability("woodruffInterval", "p", p);
  requireConfidence("woodruffInterval", confidence);
  const sorted = sortedCopy(values);
  const estimate = quantileSorted(sorted, p);
  const upTo = values.map((value) => Number(value <= estimate));
  const { patients, effective } = effectiveNumber(upTo, patient, confidence);
  const common = {
    estimate,
    se: null,
    df: null,
    n: values.length,
    patients,
    nEffective: effective,
    method: `quantile at ${p}, Woodruff’s interval on the effective number of cases, clustered by patient`,
  };
  if (patients < thresholds.patientsForBootstrap) {
    const notes: Note[] = [{ code: "too-few-for-interval", patients, needed: thresholds.patientsForBootstrap }];
    return { ...common, lower: null, upper: null, notes };
  }
  const { lower, upper } = scoreInterval(p, effective, confidence);
  const notes: Note[] = [];
  return { ...common, lower: quantileSorted(sorted, lower), upper: quantileSorted(sorted, upper), notes };
}
