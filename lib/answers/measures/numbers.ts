import { quantile, wilson, wilsonClustered } from "@/lib/stats";
import { said } from "../healing/said";
import { meansOf } from "../healing/summaries";
import type { Mean, Median, Note, Share } from "../types";
import type { Row } from "./measured";
import { medianOfRows } from "./median-of-rows";

export type NumberSummary = {
  readonly mean: Mean;
  readonly patientMean: Mean;
  readonly plain: Mean;
  readonly median: Median;
  readonly quartiles: { readonly lower: number | null; readonly upper: number | null };
  readonly deviation: number | null;
  readonly notes: readonly Note[];
};

/** A number a row: mean by patient, mean of patient means, as if every row were another patient, median and quartiles. */
export function summariseNumbers(rows: readonly Row[]): NumberSummary {
  const values = rows.map(({ value }) => value);
  const means = meansOf({ value: rows.map(({ value }) => value), person: rows.map(({ person }) => person) });
  const quartile = (p: number) => (values.length === 0 ? null : quantile({ values, p }).estimate);
  return {
    ...means,
    median: medianOfRows(rows),
    quartiles: { lower: quartile(0.25), upper: quartile(0.75) },
    deviation: means.plain.se === null ? null : means.plain.se * Math.sqrt(values.length),
  };
}

/** A share of patients, one row each: Wilson's interval, with nothing to cluster. */
export function sharePatients(rows: readonly Row[]): { readonly share: Share; readonly notes: readonly Note[] } {
  if (rows.length === 0) return summariseShare(rows);
  const x = rows.reduce((sum, { value }) => sum + value, 0);
  const { estimate, lower, upper, notes } = wilson({ x, n: rows.length });
  return {
    share: { x, n: rows.length, estimate, lower, upper, deff: 1, patients: rows.length, plain: { lower, upper } },
    notes: notes.map(said),
  };
}

/** A share of segments with its interval on the number of independent cases that they are worth. */
export function summariseShare(rows: readonly Row[]): { readonly share: Share; readonly notes: readonly Note[] } {
  if (rows.length === 0)
    return {
      share: { x: 0, n: 0, estimate: null, lower: null, upper: null, deff: null, patients: 0, plain: { lower: null, upper: null } },
      notes: [],
    };
  const { x, n, estimate, lower, upper, deff, patients, plain, notes } = wilsonClustered({
    event: rows.map(({ value }) => value),
    patient: rows.map(({ person }) => person),
  });
  return { share: { x, n, estimate, lower, upper, deff, patients, plain }, notes: notes.map(said) };
}
