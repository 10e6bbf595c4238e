import { countPatients } from "../cluster/patients";
import { type MedianBounds, medianBounds } from "../median-bounds";
import type { Note } from "../notes";
import type { PatientLabels } from "../record";
import { quantileSorted, sortedCopy } from "../summary/order";
import { thresholds } from "../thresholds";
import { type TimeCoefficient, type TimeModel, timeModel } from "../time-model";
import { type Answer, type Asked, notesOnce, tooFew } from "./answer";
import { dependsOnGain } from "./healing-at-equal-gain";

export interface MedianIndexSituation extends Asked {
  readonly situation: "median-index";
  /** Days to healing, or to the last film without it. */
  readonly days: readonly number[];
  readonly healed: readonly number[];
  readonly gainCm: readonly number[];
  readonly patient: PatientLabels;
  /** Gain at which days are asked for; the median of the rows unless said. */
  readonly atGainCm?: number;
}

export interface DaysAtGain {
  readonly gainCm: number;
  readonly days: number;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly daysPerCm: number;
  readonly model: TimeModel;
  /** Whether the index depends on gain. */
  readonly notes: readonly Note[];
}

export type MedianIndexAnswer = Answer<{ readonly bounds: MedianBounds; readonly atMedianGain: DaysAtGain | null }>;

/** Median index with some bones unhealed: bounds that need no assumption, and the time model's days at the median gain. */
export function estimateMedianIndex(asked: MedianIndexSituation): MedianIndexAnswer {
  const { days, healed, gainCm, patient, confidence = 0.95 } = asked;
  const rows = { event: healed, patient, confidence };
  const bounds = medianBounds({ ...rows, times: days.map((day, i) => day / (gainCm[i] as number)) });
  const patients = countPatients(patient);
  const enough = patients >= thresholds.patientsForInterval;
  const found = daysAtMedianGain(asked);
  const unfitted: Note = enough
    ? { code: "fallback-used", because: "the time model can’t be fitted, bounds only" }
    : tooFew(patients, thresholds.patientsForInterval);
  const fallback: readonly Note[] = found ? [] : [unfitted];
  return {
    lead: found ? "atMedianGain" : "bounds",
    records: { bounds, atMedianGain: found },
    test: null,
    notes: notesOnce(bounds.notes, fallback, found?.model.notes ?? [], found?.notes ?? []),
  };
}

/** The time model's days at a gain, by itself; `null` with too few patients, too few healed, equal gains, or no summit. */
export function daysAtMedianGain({
  days,
  healed,
  gainCm,
  patient,
  atGainCm,
  confidence = 0.95,
}: Omit<MedianIndexSituation, "situation">): DaysAtGain | null {
  if (countPatients(patient) < thresholds.patientsForInterval) return null;
  const at = atGainCm ?? quantileSorted(sortedCopy(gainCm), 0.5);
  try {
    const design = gainCm.map((cm) => [Math.log(cm)]);
    const model = timeModel({ times: days, event: healed, patient, design, names: ["log cm"], at: [Math.log(at)], confidence });
    const notes = dependsOnGain(model.coefficients[1] as TimeCoefficient);
    return { gainCm: at, days: model.estimate, lower: model.lower, upper: model.upper, daysPerCm: model.estimate / at, model, notes };
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
