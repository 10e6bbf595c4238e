import { cr2Mean } from "../cr2-mean";
import type { Note } from "../notes";
import { patientMean } from "../patient-mean";
import { plainMean } from "../plain-mean";
import type { Estimate, PatientLabels } from "../record";
import { thresholds } from "../thresholds";
import { type Answer, type Asked, notesOnce } from "./answer";

export interface MeanSituation extends Asked {
  readonly situation: "mean";
  readonly values: readonly number[];
  readonly patient: PatientLabels;
}

export type MeanAnswer = Answer<{ readonly mean: Estimate; readonly patientMean: Estimate; readonly plain: Estimate }>;

/** Bone-weighted mean with CR2; the mean of patients beside it, and in front when df is below four; values alone below three patients. */
export function estimateMean({ values, patient, confidence = 0.95 }: MeanSituation): MeanAnswer {
  const mean = cr2Mean({ values, patient, confidence });
  const byPatient = patientMean({ values, patient, confidence });
  const few = (mean.patients as number) < thresholds.patientsForInterval;
  const lead = few ? "values" : (mean.df as number) < thresholds.dfForSegmentMean ? "patientMean" : "mean";
  const notes = few ? mean.notes : notesOnce(mean.notes, differing(mean, byPatient));
  return { lead, records: { mean, patientMean: byPatient, plain: plainMean({ values, patient, confidence }) }, test: null, notes };
}

function differing(mean: Estimate, byPatient: Estimate): readonly Note[] {
  const apart = Math.abs((mean.estimate as number) - (byPatient.estimate as number));
  return apart > thresholds.standardErrorsApart * (mean.se as number) ? [{ code: "bilateral-patients-differ" }] : [];
}
