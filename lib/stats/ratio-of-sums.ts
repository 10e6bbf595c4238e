import { requireRows } from "./cluster/check-rows";
import { indexPatients, sumByPatient } from "./cluster/patients";
import type { Note } from "./notes";
import type { Estimate, PatientLabels } from "./record";
import { requireConfidence, requireFinite, requireSameLength } from "./require";
import { sumOfSquares } from "./summary/centred";
import { powerOfTwoScale } from "./summary/scale";
import { noInterval, tInterval } from "./summary/t-interval";
import { thresholds } from "./thresholds";

/**
 * Σ numerator / Σ denominator (all days over all centimetres) with the linearised standard error over patients:
 * SE = √(G/(G − 1) · Σ(y − R·x)²) / Σx with y, x the sums of a patient, t on G − 1 df. Long denominators weigh more.
 * Below six patients the error is answered and the interval is not: linearisation is too far off there.
 * Cochran WG. Sampling Techniques, 3rd ed., 1977, ch. 6 (with the factor G/(G − 1) of the sandwich).
 * @throws RangeError without rows, with unequal lengths, a negative denominator or a sum of zero; TypeError when a value is not finite
 * @example ratioOfSums({ numerator: [100, 200], denominator: [4, 6], patient: [1, 2] }).estimate // => 30
 */
export function ratioOfSums({
  numerator,
  denominator,
  patient,
  confidence = 0.95,
}: {
  numerator: readonly number[];
  denominator: readonly number[];
  patient: PatientLabels;
  confidence?: number;
}): Estimate & { readonly estimate: number } {
  requireRows("ratioOfSums", numerator, patient);
  requireSameLength("ratioOfSums", "values", numerator.length, "denominator", denominator.length);
  requireDenominator(denominator);
  requireConfidence("ratioOfSums", confidence);
  const index = indexPatients(patient);
  const [above, below] = [powerOfTwoScale(numerator), powerOfTwoScale(denominator)];
  const y = sumByPatient(
    index,
    numerator.map((value) => value / above),
  );
  const x = sumByPatient(
    index,
    denominator.map((value) => value / below),
  );
  const total = x.reduce((sum, value) => sum + value, 0);
  const ratio = y.reduce((sum, value) => sum + value, 0) / total;
  const unit = above / below;
  const estimate = ratio * unit;
  const common = {
    estimate,
    n: numerator.length,
    patients: index.count,
    method: "ratio of sums, linearised variance by patient, t(G − 1)",
  };
  if (index.count < 2) return { ...common, ...noInterval, notes: [tooFew(index.count)] };
  const spread = sumOfSquares(y.map((value, c) => value - ratio * (x[c] as number)));
  const df = index.count - 1;
  const se = (Math.sqrt((index.count / df) * spread) / total) * unit;
  if (index.count < thresholds.patientsForRatio) return { ...common, se, df, lower: null, upper: null, notes: [tooFew(index.count)] };
  return { ...common, se, df, ...tInterval(estimate, se, df, confidence), notes: [] };
}

function tooFew(patients: number): Note {
  return { code: "too-few-for-interval", patients, needed: thresholds.patientsForRatio };
}

function requireDenominator(denominator: readonly number[]): void {
  requireFinite("ratioOfSums", "denominator", denominator);
  const negative = denominator.findIndex((value) => value < 0);
  if (negative >= 0)
    throw new RangeError(`ratioOfSums requires a denominator of at least zero, received ${denominator[negative]} at ${negative}`);
  if (!denominator.some((value) => value > 0)) throw new RangeError("ratioOfSums requires a denominator that sums above zero, received 0");
}
