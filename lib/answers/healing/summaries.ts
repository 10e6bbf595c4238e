import { endsAtConsolidation, type IndexDefinition } from "@/lib/outcomes";
import { cr2Mean, type Estimate, medianBounds, patientMean, plainMean, quantile, ratioOfSums, thresholds, timeModel } from "@/lib/stats";
import type { DaysAtMedianGain, Mean, Median, Note } from "../types";
import { medianInterval } from "./median-interval";
import type { Censored, Measured } from "./read";
import { said } from "./said";

const noMean: Mean = { estimate: null, se: null, df: null, lower: null, upper: null, n: 0, patients: 0 };

function asMean({ estimate, se, df, lower, upper, n, patients }: Estimate): Mean {
  return { estimate, se, df, lower, upper, n, patients: patients ?? 0 };
}

/** The four summaries over healed segments: bone-weighted, per patient, as if every bone were another patient, ratio of sums. */
export function meansOf(measured: readonly Measured[]): Record<"mean" | "patientMean" | "plain" | "ratioOfSums", Mean> {
  if (measured.length === 0) return { mean: noMean, patientMean: noMean, plain: noMean, ratioOfSums: noMean };
  const values = measured.map(({ value }) => value);
  const patient = measured.map(({ person }) => person);
  // the plain mean has no patients of its own, so the patients of the clustered one stand beside it
  const mean = asMean(cr2Mean({ values, patient }));
  return {
    mean,
    patientMean: asMean(patientMean({ values, patient })),
    plain: { ...asMean(plainMean({ values })), patients: mean.patients },
    ratioOfSums: sumsOf(measured, patient),
  };
}

function sumsOf(measured: readonly Measured[], patient: readonly number[]): Mean {
  const centimetres = measured.map(({ gainMm }) => (gainMm ?? 0) / 10);
  if (!centimetres.some((length) => length > 0)) return noMean;
  return asMean(ratioOfSums({ numerator: measured.map(({ days }) => days), denominator: centimetres, patient }));
}

/**
 * The median on the index scale: by the Kaplan–Meier curve with its assumption-free bounds. Only a fully observed group has an interval
 * (patient bootstrap): with unhealed bones the curve on this scale is description.
 */
export function medianOf(measured: readonly Measured[], censored: readonly Censored[]): Median {
  const rows = [...measured, ...censored];
  if (rows.length === 0) return { estimate: null, lower: null, upper: null, bounds: [null, null], notes: [] };
  const { estimate, bounds, notes } = medianBounds({
    times: rows.map(({ value }) => value),
    event: rows.map(({ reading }) => (reading === "measured" ? 1 : 0)),
    patient: rows.map(({ person }) => person),
  });
  const interval = censored.length === 0 ? medianInterval(measured) : { lower: null, upper: null, notes: [] };
  return { estimate, ...interval, bounds, notes: [...notes.map(said), ...interval.notes] };
}

/** Type 7 of the healed when nothing is censored, by the curve otherwise; `null` when not reached. */
export function quartilesOf(measured: readonly Measured[], censored: readonly Censored[], curveQuartiles: Quartiles): Quartiles {
  if (censored.length > 0 || measured.length === 0) return curveQuartiles;
  const values = measured.map(({ value }) => value);
  return { lower: quantile({ values, p: 0.25 }).estimate, upper: quantile({ values, p: 0.75 }).estimate };
}
export type Quartiles = { readonly lower: number | null; readonly upper: number | null };

type Fitted = { readonly days: DaysAtMedianGain; readonly notes: readonly Note[] };

/**
 * Days to the event at the cohort's median gain with the unhealed in: a log-normal time model of days on log gain, by patient.
 * Without enough healed bones, or where all gains are equal, the model can't be fitted and nothing is answered.
 */
export function daysAtGain(
  measured: readonly Measured[],
  censored: readonly Censored[],
  gainMm: number | null,
  definition: IndexDefinition,
): Fitted {
  const rows = [...measured, ...censored].filter((row) => (row.gainMm ?? 0) > 0 && row.days > 0);
  const gains = new Set(rows.map((row) => row.gainMm));
  const healed = rows.filter(({ reading }) => reading === "measured").length;
  if (gainMm === null || !endsAtConsolidation(definition) || healed < 3 || gains.size < 2) return { days: null, notes: [] };
  const model = timeModel({
    times: rows.map(({ days }) => days),
    event: rows.map(({ reading }) => (reading === "measured" ? 1 : 0)),
    patient: rows.map(({ person }) => person),
    design: rows.map((row) => [Math.log((row.gainMm as number) / 10)]),
    names: ["log cm"],
    at: [Math.log(gainMm / 10)],
  });
  const slope = model.coefficients[1];
  const depends = slope?.lower !== null && slope?.upper !== null && slope !== undefined && (slope.lower > 1 || slope.upper < 1);
  return {
    days: { gainMm, days: model.estimate, lower: model.lower, upper: model.upper, daysPerCm: (model.estimate * 10) / gainMm },
    notes: depends ? [said({ code: "index-depends-on-gain" })] : [],
  };
}

/** Notes that the summaries themselves call for. */
export function meanNotes({ mean, patientMean: byPatient }: { readonly mean: Mean; readonly patientMean: Mean }): readonly Note[] {
  if (mean.n === 0) return [];
  if (mean.patients < thresholds.patientsForInterval)
    return [said({ code: "too-few-for-interval", patients: mean.patients, needed: thresholds.patientsForInterval })];
  const df = mean.df ?? 0;
  const notes = [said({ code: "clustered", df })];
  if (df < thresholds.dfForSegmentMean) notes.push(said({ code: "few-patients", df }));
  const apart = Math.abs((mean.estimate ?? 0) - (byPatient.estimate ?? 0));
  if (mean.n > mean.patients && apart > thresholds.standardErrorsApart * (mean.se ?? 0))
    notes.push(said({ code: "bilateral-patients-differ" }));
  return notes;
}
