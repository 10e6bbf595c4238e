import { varianceParts } from "./agreement/variance-parts";
import { indexPatients } from "./cluster/patients";
import { cr2Mean } from "./cr2-mean";
import { normalQuantile } from "./distributions";
import type { Estimate, PatientLabels } from "./record";
import { requireConfidence, requireSome } from "./require";
import { centred } from "./summary/centred";

export interface BlandAltman extends Estimate {
  readonly estimate: number;
  /** Variance of the differences between patients and within them; `between` is 0 when no patient has two. */
  readonly between: number;
  readonly within: number;
  /** estimate ± multiplier × √(between + within) */
  readonly limitLower: number;
  readonly limitUpper: number;
}

/**
 * Bias of differences with its interval (CR2), and the limits within which `coverage` of single differences lie.
 * Several differences a patient: the variance of one difference is that between patients plus that within, by REML; with one a patient it is SD².
 * Bland JM, Altman DG. Lancet 1986;327:307-310; Stat Methods Med Res 1999;8:135-160 (section 5: several differences a subject).
 * @param values differences, such as gain less plan
 * @throws RangeError with fewer than two values, unequal lengths or a coverage or confidence outside 0 to 1; TypeError when a value isn't finite
 * @example blandAltman({ values: [-1, 0, 1], patient: ["a", "b", "c"] }).limitUpper.toFixed(2) // => "1.96"
 */
export function blandAltman({
  values,
  patient,
  coverage = 0.95,
  confidence = 0.95,
}: {
  values: readonly number[];
  patient: PatientLabels;
  coverage?: number;
  confidence?: number;
}): BlandAltman {
  requireSome("blandAltman", "values", values.length, 2);
  requireConfidence("blandAltman", coverage);
  const bias = cr2Mean({ values, patient, confidence });
  const { residuals, scale } = centred(values);
  const parts = varianceParts(residuals, indexPatients(patient));
  const half = normalQuantile(1 - (1 - coverage) / 2) * Math.sqrt(parts.between + parts.within) * scale;
  return {
    ...bias,
    between: parts.between * scale * scale,
    within: parts.within * scale * scale,
    limitLower: bias.estimate - half,
    limitUpper: bias.estimate + half,
    method: "Bland–Altman limits of agreement, variance between and within patients by REML; bias with CR2",
    convention: `±${normalQuantile(1 - (1 - coverage) / 2).toFixed(2)} standard deviations`,
  };
}
