import { blandAltman } from "../bland-altman";
import { cr2Mean } from "../cr2-mean";
import type { Note } from "../notes";
import type { Estimate, PatientLabels } from "../record";
import { requireSameLength } from "../require";
import { quantileSorted, sortedCopy } from "../summary/order";
import { thresholds } from "../thresholds";
import { wilsonClustered } from "../wilson-clustered";
import { type Answer, type Asked, notesOnce, tooFew } from "./answer";

export interface GainErrorSituation extends Asked {
  readonly situation: "gain-error";
  /** Gain less the plan at the start. */
  readonly errorMm: readonly number[];
  readonly patient: PatientLabels;
  /** The unit's own tolerance; an error at it lies within. */
  readonly toleranceMm: number;
  /** 1 where lengthening was stopped early; those rows are listed and never left out. */
  readonly stoppedEarly?: readonly number[];
}

export type GainErrorAnswer = Answer<{
  readonly bias: Estimate;
  readonly withinTolerance: ReturnType<typeof wilsonClustered>;
  readonly spread: { readonly p5: number; readonly median: number; readonly p95: number };
  /** From twenty patients on; below, the errors themselves are shown. */
  readonly limits: ReturnType<typeof blandAltman> | null;
}>;

/** Bias with CR2, share within the tolerance, median with 5 and 95 %, and limits of agreement from twenty patients on. */
export function estimateGainError(asked: GainErrorSituation): GainErrorAnswer {
  const { errorMm, patient, toleranceMm, stoppedEarly, confidence = 0.95 } = asked;
  if (stoppedEarly) requireSameLength("estimate", "errorMm", errorMm.length, "stoppedEarly", stoppedEarly.length);
  const bias = cr2Mean({ values: errorMm, patient, confidence });
  const patients = bias.patients as number;
  const sorted = sortedCopy(errorMm);
  const enough = patients >= thresholds.patientsForBootstrap;
  const short: readonly Note[] = enough ? [] : [tooFew(patients, thresholds.patientsForBootstrap)];
  const early: readonly Note[] = stoppedEarly?.some((one) => one === 1) ? [{ code: "early-stops-listed" }] : [];
  return {
    lead: patients < thresholds.patientsForInterval ? "values" : "bias",
    records: {
      bias,
      withinTolerance: wilsonClustered({ event: errorMm.map((error) => (Math.abs(error) <= toleranceMm ? 1 : 0)), patient, confidence }),
      spread: { p5: quantileSorted(sorted, 0.05), median: quantileSorted(sorted, 0.5), p95: quantileSorted(sorted, 0.95) },
      limits: enough ? blandAltman({ values: errorMm, patient, confidence }) : null,
    },
    test: null,
    notes: notesOnce(bias.notes, short, early),
  };
}
