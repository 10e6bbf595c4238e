import { medianInterval } from "../median-interval";
import type { Note } from "../notes";
import { patientBootstrap } from "../patient-bootstrap";
import type { PatientLabels } from "../record";
import { requireFinite, requireSome } from "../require";
import { quantileSorted, sortedCopy } from "../summary/order";
import { thresholds } from "../thresholds";
import { type Answer, type Asked, tooFew } from "./answer";

export interface MedianSituation extends Asked {
  readonly situation: "median";
  readonly values: readonly number[];
  readonly patient: PatientLabels;
  readonly seed: number;
}

export interface Quantiles {
  readonly least: number;
  readonly lowerQuartile: number;
  readonly median: number;
  readonly upperQuartile: number;
  readonly greatest: number;
  readonly n: number;
}

export type MedianAnswer = Answer<{
  readonly quantiles: Quantiles;
  readonly interval: {
    readonly estimate: number | null;
    readonly lower: number | null;
    readonly upper: number | null;
    readonly method: string;
  } | null;
}>;

/** Type 7; interval from 20 patients on: by resampling patients, or between order statistics when every patient has one value. */
export function estimateMedian({ values, patient, seed, confidence = 0.95 }: MedianSituation): MedianAnswer {
  requireSome("estimate", "value", values.length);
  requireFinite("estimate", "values", values);
  const quantiles = quantilesOf(values);
  const patients = new Set(patient).size;
  if (patients < thresholds.patientsForBootstrap) {
    const notes: readonly Note[] = [tooFew(patients, thresholds.patientsForBootstrap)];
    const lead = patients < thresholds.patientsForInterval ? "values" : "quantiles";
    return { lead, records: { quantiles, interval: null }, test: null, notes };
  }
  const interval =
    patients === values.length
      ? medianInterval({ values, confidence })
      : patientBootstrap({ values, patient, statistic: "quantile", p: 0.5, seed, confidence });
  return { lead: "quantiles", records: { quantiles, interval }, test: null, notes: interval.notes };
}

export function quantilesOf(values: readonly number[]): Quantiles {
  const sorted = sortedCopy(values);
  const at = (p: number) => quantileSorted(sorted, p);
  return { least: at(0), lowerQuartile: at(0.25), median: at(0.5), upperQuartile: at(0.75), greatest: at(1), n: values.length };
}
