import { ratioOfSums } from "../ratio-of-sums";
import type { Estimate, PatientLabels } from "../record";
import { thresholds } from "../thresholds";
import type { Answer, Asked } from "./answer";

export interface RatioSituation extends Asked {
  readonly situation: "ratio-of-sums";
  readonly numerator: readonly number[];
  readonly denominator: readonly number[];
  readonly patient: PatientLabels;
}

export type RatioAnswer = Answer<{ readonly ratio: Estimate }>;

/** Σ days / Σ cm: long gains weigh more. Below six patients the error stands without limits; below three the values alone. */
export function estimateRatio({ numerator, denominator, patient, confidence = 0.95 }: RatioSituation): RatioAnswer {
  const ratio = ratioOfSums({ numerator, denominator, patient, confidence });
  const few = (ratio.patients as number) < thresholds.patientsForInterval;
  return { lead: few ? "values" : "ratio", records: { ratio }, test: null, notes: ratio.notes };
}
