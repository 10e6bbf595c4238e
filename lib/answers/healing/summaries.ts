import { endsAtConsolidation, type IndexDefinition } from "@/lib/outcomes";
import { type Estimate, estimate, kaplanMeier, medianBounds, quantile } from "@/lib/stats";
import type { DaysAtMedianGain, HealingGroup, Mean, Median, Note } from "../types";
import { medianInterval } from "./median-interval";
import type { Censored, Measured } from "./read";
import { said } from "./said";

export type Means = {
  readonly mean: Mean;
  readonly patientMean: Mean;
  readonly plain: Mean;
  readonly notes: readonly Note[];
};
type Valued = { readonly value: number; readonly person: number };

export const noMean: Mean = { estimate: null, se: null, df: null, lower: null, upper: null, n: 0, patients: 0 };

function asMean({ estimate: mean, se, df, lower, upper, n }: Estimate, patients: number): Mean {
  return { estimate: mean, se, df, lower, upper, n, patients };
}

/** Bone-weighted, per patient, and as if every bone were another patient. */
export function meansOf(rows: readonly Valued[]): Means {
  if (rows.length === 0) return { mean: noMean, patientMean: noMean, plain: noMean, notes: [] };
  const values = rows.map(({ value }) => value);
  const { records, notes } = estimate({ situation: "mean", values, patient: rows.map(({ person }) => person) });
  const patients = records.mean.patients ?? 0;
  return {
    mean: asMean(records.mean, patients),
    patientMean: asMean(records.patientMean, patients),
    plain: asMean(records.plain, patients),
    notes: notes.map(said),
  };
}

/** All days over all centimetres of the healed. */
export function ratioOf(measured: readonly Measured[]): Mean {
  const denominator = measured.map(({ gainMm }) => (gainMm ?? 0) / 10);
  if (!denominator.some((length) => length > 0)) return noMean;
  const { records } = estimate({
    situation: "ratio-of-sums",
    numerator: measured.map(({ days }) => days),
    denominator,
    patient: measured.map(({ person }) => person),
  });
  return asMean(records.ratio, records.ratio.patients ?? 0);
}

/** The measured and the censored of a group as columns; `event` is 1 of the measured. */
export type Columns = { readonly values: readonly number[]; readonly event: readonly number[]; readonly patient: readonly number[] };

export function columnsOf(rows: readonly (Measured | Censored)[]): Columns {
  return {
    values: rows.map(({ value }) => value),
    event: rows.map(({ reading }) => Number(reading === "measured")),
    patient: rows.map(({ person }) => person),
  };
}

/**
 * The median on the index scale: by the Kaplan–Meier curve with its assumption-free bounds. Only a fully observed group has an interval
 * (by patients): with unhealed bones the curve on this scale is description.
 */
export function medianOf({ values, event, patient }: Columns): Median {
  if (values.length === 0) return { estimate: null, lower: null, upper: null, bounds: [null, null], notes: [] };
  const { estimate: median, bounds, notes } = medianBounds({ times: values, event, patient });
  const interval = event.includes(0) ? { lower: null, upper: null, notes: [] } : medianInterval(values, patient);
  return { estimate: median, ...interval, bounds, notes: [...notes.map(said), ...interval.notes] };
}

/** Type 7 of the healed when nothing is censored, by the curve otherwise; `null` when not reached. */
export function quartilesOf({ values, event }: Columns): HealingGroup["quartiles"] {
  if (values.length === 0) return { lower: null, upper: null };
  if (event.includes(0)) return kaplanMeier({ times: values, event }).quartiles;
  return { lower: quantile({ values, p: 0.25 }).estimate, upper: quantile({ values, p: 0.75 }).estimate };
}

type Fitted = { readonly days: DaysAtMedianGain; readonly notes: readonly Note[] };

/** Days to healing at the cohort's median gain with the unhealed in, by the time model; `null` where it can't be fitted. */
export function daysAtGain(all: readonly (Measured | Censored)[], gainMm: number | null, definition: IndexDefinition): Fitted {
  const rows = all.filter((row) => (row.gainMm ?? 0) > 0 && row.days > 0);
  const healed = rows.map(({ reading }) => Number(reading === "measured"));
  if (gainMm === null || !endsAtConsolidation(definition) || !healed.includes(1)) return { days: null, notes: [] };
  const { records, notes } = estimate({
    situation: "median-index",
    days: rows.map(({ days }) => days),
    healed,
    gainCm: rows.map((row) => (row.gainMm as number) / 10),
    patient: rows.map(({ person }) => person),
    atGainCm: gainMm / 10,
  });
  const at = records.atMedianGain;
  const depends = notes.filter(({ code }) => code === "index-depends-on-gain").map(said);
  if (!at) return { days: null, notes: [] };
  return { days: { gainMm, days: at.days, lower: at.lower, upper: at.upper, daysPerCm: at.daysPerCm }, notes: depends };
}
