import { totalVarianceDf } from "./agreement/total-variance-df";
import { varianceParts } from "./agreement/variance-parts";
import { indexPatients } from "./cluster/patients";
import { cr2Mean } from "./cr2-mean";
import { normalQuantile } from "./distributions";
import type { Estimate, PatientLabels } from "./record";
import { requireConfidence, requireSome } from "./require";
import { centred } from "./summary/centred";
import { tInterval } from "./summary/t-interval";

export interface BlandAltman extends Estimate {
  readonly estimate: number;
  /** Variance of the differences between patients and within them; `between` is 0 when no patient has two. */
  readonly between: number;
  readonly within: number;
  /** estimate ± multiplier × √(between + within) */
  readonly limitLower: number;
  readonly limitUpper: number;
  /** Degrees of freedom of between + within, n − 1 with one value a patient; null where the bias has no se. */
  readonly varianceDf: number | null;
  /** Of each limit: √(se² + multiplier² × (between + within)/(2 varianceDf)). */
  readonly limitSe: number | null;
  /** Limit ± t(df of the bias) × limitSe. */
  readonly limitLowerInterval: { readonly lower: number; readonly upper: number } | null;
  readonly limitUpperInterval: { readonly lower: number; readonly upper: number } | null;
}

/**
 * Bias of differences with its interval (CR2), and the limits within which `coverage` of single differences lie.
 * Several differences a patient: the variance of one difference is that between patients plus that within, by REML; with one a patient it is SD².
 * A limit's interval adds the chance of the bias (CR2) to that of the standard deviation; with one difference a patient its se is that of 1999.
 * Bland JM, Altman DG. Lancet 1986;327:307-310; Stat Methods Med Res 1999;8:135-160 (se of a limit; section 5: several differences a subject).
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
  const index = indexPatients(patient);
  const parts = varianceParts(residuals, index);
  const multiplier = normalQuantile(1 - (1 - coverage) / 2);
  const deviation = Math.sqrt(parts.between + parts.within) * scale;
  const [limitLower, limitUpper] = [bias.estimate - multiplier * deviation, bias.estimate + multiplier * deviation];
  const varianceDf = bias.se === null ? null : totalVarianceDf(parts, index);
  const limitSe = varianceDf === null ? null : Math.hypot(bias.se as number, (multiplier * deviation) / Math.sqrt(2 * varianceDf));
  const around = (limit: number) => (limitSe === null ? null : tInterval(limit, limitSe, bias.df as number, confidence));
  return {
    ...bias,
    between: parts.between * scale * scale,
    within: parts.within * scale * scale,
    limitLower,
    limitUpper,
    varianceDf,
    limitSe,
    limitLowerInterval: around(limitLower),
    limitUpperInterval: around(limitUpper),
    method:
      "Bland–Altman limits of agreement, variance between and within patients by REML; bias with CR2, limits with the chance of bias and deviation",
    convention: `±${multiplier.toFixed(2)} standard deviations`,
  };
}
