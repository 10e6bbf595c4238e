import { endsAtConsolidation, type IndexDefinition } from "@/lib/outcomes";
import { daysAtMedianGain, type Estimate, estimate, medianBounds, quantileSorted, sortedCopy } from "@/lib/stats";
import type { DaysAtMedianGain, HealingGroup, Mean, Note } from "../types";
import { type Columns, withGain } from "./columns";
import { medianInterval } from "./median-interval";
import { said } from "./said";

export type Means = {
  readonly mean: Mean;
  readonly patientMean: Mean;
  readonly plain: Mean;
  readonly notes: readonly Note[];
};
type Valued = { readonly value: readonly number[]; readonly person: readonly number[] };

export const noMean: Mean = { estimate: null, se: null, df: null, lower: null, upper: null, n: 0, patients: 0 };

function asMean({ estimate: mean, se, df, lower, upper, n }: Estimate, patients: number): Mean {
  return { estimate: mean, se, df, lower, upper, n, patients };
}

/** Bone-weighted, per patient, and as if every bone were another patient. */
export function meansOf({ value, person }: Valued): Means {
  if (value.length === 0) return { mean: noMean, patientMean: noMean, plain: noMean, notes: [] };
  const { records, notes } = estimate({ situation: "mean", values: value, patient: person });
  const patients = records.mean.patients ?? 0;
  return {
    mean: asMean(records.mean, patients),
    patientMean: asMean(records.patientMean, patients),
    plain: asMean(records.plain, patients),
    notes: notes.map(said),
  };
}

/** All days over all centimetres of the healed. */
export function ratioOf({ measured, days, gainMm, person }: Columns): Mean {
  const denominator = gainMm.slice(0, measured).map((gain) => (Number.isNaN(gain) ? 0 : gain / 10));
  if (!denominator.some((length) => length > 0)) return noMean;
  const { records } = estimate({
    situation: "ratio-of-sums",
    numerator: days.slice(0, measured),
    denominator,
    patient: person.slice(0, measured),
  });
  return asMean(records.ratio, records.ratio.patients ?? 0);
}

/**
 * Median and quartiles on the index scale: by the Kaplan–Meier curve, the median with its assumption-free bounds; quartiles of a fully observed
 * group by type 7. Only such a group has an interval (by patients): with unhealed bones the curve on this scale is description.
 */
export function middleOf({ value, event, person }: Columns): Pick<HealingGroup, "median" | "quartiles"> {
  if (value.length === 0)
    return {
      median: { estimate: null, lower: null, upper: null, bounds: [null, null], notes: [] },
      quartiles: { lower: null, upper: null },
    };
  const { estimate: median, bounds, quartiles, notes } = medianBounds({ times: value, event, patient: person });
  const observed = !event.includes(0);
  const interval = observed ? medianInterval(value, person) : { lower: null, upper: null, notes: [] };
  return {
    median: { estimate: median, ...interval, bounds, notes: [...notes.map(said), ...interval.notes] },
    quartiles: observed ? quartilesOf(value) : quartiles,
  };
}

function quartilesOf(values: readonly number[]): HealingGroup["quartiles"] {
  const sorted = sortedCopy(values);
  return { lower: quantileSorted(sorted, 0.25), upper: quantileSorted(sorted, 0.75) };
}

type Fitted = { readonly days: DaysAtMedianGain; readonly notes: readonly Note[] };

/** Days to healing at the cohort's median gain with the unhealed in, by the time model; `null` where it can't be fitted. */
export function daysAtGain(columns: Columns, gainMm: number | null, definition: IndexDefinition): Fitted {
  if (gainMm === null || !endsAtConsolidation(definition)) return { days: null, notes: [] };
  const found = fitAt(columns, gainMm);
  if (!found) return { days: null, notes: [] };
  const { days, lower, upper, daysPerCm, notes } = found;
  return { days: { gainMm, days, lower, upper, daysPerCm }, notes: notes.map(said) };
}

type Fit = ReturnType<typeof daysAtMedianGain>;
/** Fits of groups, as long as their columns are kept: the summaries of a page and the figure of the fit ask for the same one. */
const fits = new WeakMap<Columns, Fit>();

/** The time model of a group at its cohort's median gain, mm; `null` where it can't be fitted. */
export function fitAt(columns: Columns, gainMm: number): Fit {
  const held = fits.get(columns);
  if (held !== undefined) return held;
  const { days, healed, gainCm, patient } = withGain(columns, { alsoDays: true });
  const found = healed.includes(1) ? daysAtMedianGain({ days, healed, gainCm, patient, atGainCm: gainMm / 10 }) : null;
  fits.set(columns, found);
  return found;
}
