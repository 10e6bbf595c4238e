import { sumsOfSquaresByPatient } from "./agreement/mean-squares";
import { requireRows } from "./cluster/check-rows";
import { indexPatients } from "./cluster/patients";
import type { Note } from "./notes";
import type { PatientLabels } from "./record";
import { requireSome } from "./require";
import { centred } from "./summary/centred";

/**
 * Intraclass correlation of values of the same patient, by one-way analysis of variance with unequal numbers of values, and the design effect.
 * (between − within)/(between + (n₀ − 1) within) of the mean squares, n₀ = (N − Σm²/N)/(G − 1). It may be negative and is not cut at zero.
 * `designEffect` is 1 + (Σm²/N − 1) ICC, `designEffectMeanSize` 1 + (N/G − 1) ICC. All null when no patient has two values or nothing varies.
 * Donner A, Koval JJ. Biometrics 1980;36:19-25; Kish L. Survey Sampling 1965.
 * @throws RangeError with fewer than two patients or unequal lengths; TypeError when a value isn't finite
 * @example icc({ values: [1, 1, 5, 5], patient: ["a", "a", "b", "b"] }).estimate // => 1
 */
export function icc({ values, patient }: { values: readonly number[]; patient: PatientLabels }) {
  requireRows("icc", values, patient);
  const index = indexPatients(patient);
  requireSome("icc", "patients", index.count, 2);
  const { residuals, scale } = centred(values);
  const sums = sumsOfSquaresByPatient(residuals, index);
  const n = values.length;
  const squares = index.rows.reduce((sum, m) => sum + m * m, 0);
  const typicalSize = (n - squares / n) / (index.count - 1);
  const common = { n, patients: index.count, typicalSize, method: "intraclass correlation, one-way analysis of variance" } as const;
  const between = sums.between / (index.count - 1);
  const within = sums.within / (n - index.count);
  const spread = between + (typicalSize - 1) * within;
  if (n === index.count || spread === 0) {
    const because = n === index.count ? "no patient has two values" : "all values are equal";
    const notes: readonly Note[] = [{ code: "not-estimable", because }];
    return { ...common, ...nothing, notes };
  }
  const estimate = (between - within) / spread;
  const designEffectMeanSize = 1 + (n / index.count - 1) * estimate;
  return {
    ...common,
    estimate,
    betweenMeanSquare: between * scale * scale,
    withinMeanSquare: within * scale * scale,
    designEffect: 1 + (squares / n - 1) * estimate,
    designEffectMeanSize,
    effectiveN: designEffectMeanSize > 0 ? n / designEffectMeanSize : null,
    notes: [] as readonly Note[],
  };
}

const nothing = {
  estimate: null,
  betweenMeanSquare: null,
  withinMeanSquare: null,
  designEffect: null,
  designEffectMeanSize: null,
  effectiveN: null,
} as const;
