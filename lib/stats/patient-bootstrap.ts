import { requireRows } from "./cluster/check-rows";
import { indexPatients } from "./cluster/patients";
import type { Note } from "./notes";
import type { PatientLabels } from "./record";
import { requireConfidence, requireProbability } from "./require";
import { bootstrapReplicates, percentileInterval } from "./resample/bootstrap";
import { meanOfDraws, quantileOfDraws } from "./resample/row-statistics";
import { thresholds } from "./thresholds";

/**
 * A mean or a quantile of all values with the percentile interval of a bootstrap that draws whole patients.
 * Below twenty patients there is no interval: the percentile interval is too narrow there.
 * Davison AC, Hinkley DV. Bootstrap Methods and their Application, 1997, section 3.8; Efron B, Tibshirani RJ. 1993, ch. 13.
 * @param p which quantile, 0.5 for the median; type 7 of Hyndman and Fan
 * @param seed the same seed gives the same interval
 * @throws RangeError without values, with unequal lengths, or a seed or number of repeats that isn't whole; TypeError when a value isn't finite
 * @example patientBootstrap({ values: [1, 2, 3, 10], patient: [1, 1, 2, 3], statistic: "quantile", seed: 1 }).estimate // => 2.5
 */
export function patientBootstrap({
  values,
  patient,
  statistic = "mean",
  p = 0.5,
  repeats = 9999,
  seed,
  confidence = 0.95,
}: {
  values: readonly number[];
  patient: PatientLabels;
  statistic?: "mean" | "quantile";
  p?: number;
  repeats?: number;
  seed: number;
  confidence?: number;
}) {
  requireRows("patientBootstrap", values, patient);
  requireProbability("patientBootstrap", "p", p);
  requireConfidence("patientBootstrap", confidence);
  const patients = indexPatients(patient).count;
  const ofDraws = statistic === "mean" ? meanOfDraws(values, patient) : quantileOfDraws(values, patient, p);
  const common = {
    estimate: ofDraws(new Int32Array(patients).fill(1)),
    df: null,
    n: values.length,
    patients,
    repeats,
    seed,
    method: `${statistic === "mean" ? "mean" : `quantile at ${p}`}, percentile bootstrap of whole patients`,
    convention: "limits at (B + 1)p of the replicates",
  };
  if (patients < thresholds.patientsForBootstrap) {
    const notes: Note[] = [{ code: "too-few-for-interval", patients, needed: thresholds.patientsForBootstrap }];
    return { ...common, se: null, lower: null, upper: null, notes };
  }
  const interval = percentileInterval(bootstrapReplicates({ patients, repeats, seed, statistic: ofDraws }), confidence);
  const notes: Note[] = interval.se === 0 ? [{ code: "constant-values" }] : [];
  return { ...common, ...interval, notes };
}
