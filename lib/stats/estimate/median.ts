import { countPatients } from "../cluster/patients";
import { medianInterval } from "../median-interval";
import type { Note } from "../notes";
import { patientBootstrap } from "../patient-bootstrap";
import type { PatientLabels } from "../record";
import { requireFinite, requireSome } from "../require";
import { quantileSorted, sortedCopy } from "../summary/order";
import { thresholds } from "../thresholds";
import { woodruffInterval } from "../woodruff-interval";
import { type Answer, type Asked, tooFew } from "./answer";

export interface MedianSituation extends Asked {
  readonly situation: "median";
  readonly values: readonly number[];
  readonly patient: PatientLabels;
  readonly seed: number;
  /** How often patients are drawn, where they are. */
  readonly repeats?: number;
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

/** Type 7; interval from 20 patients on: between order statistics when every patient has one value, else by resampling patients, of very many Woodruff's. */
export function estimateMedian({ values, patient, seed, repeats = 9999, confidence = 0.95 }: MedianSituation): MedianAnswer {
  requireSome("estimate", "value", values.length);
  requireFinite("estimate", "values", values);
  const quantiles = quantilesOf(values);
  const patients = countPatients(patient);
  if (patients < thresholds.patientsForBootstrap) {
    const notes: readonly Note[] = [tooFew(patients, thresholds.patientsForBootstrap)];
    const lead = patients < thresholds.patientsForInterval ? "values" : "quantiles";
    return { lead, records: { quantiles, interval: null }, test: null, notes };
  }
  const interval = () => {
    if (patients === values.length) return medianInterval({ values, confidence });
    if (patients >= thresholds.patientsForWoodruff) return woodruffInterval({ values, patient, confidence });
    return patientBootstrap({ values, patient, statistic: "quantile", p: 0.5, repeats, seed, confidence });
  };
  const found = interval();
  return { lead: "quantiles", records: { quantiles, interval: found }, test: null, notes: found.notes };
}

export function quantilesOf(values: readonly number[]): Quantiles {
  const sorted = sortedCopy(values);
  const at = (p: number) => quantileSorted(sorted, p);
  return { least: at(0), lowerQuartile: at(0.25), median: at(0.5), upperQuartile: at(0.75), greatest: at(1), n: values.length };
}
