import { cr2Mean, patientMean, plainMean, quantile, wilson, wilsonClustered } from "@/lib/stats";
import { said } from "../healing/said";
import { meanNotes } from "../healing/summaries";
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

const none: Mean = { estimate: null, se: null, df: null, lower: null, upper: null, n: 0, patients: 0 };

/** A number a row: mean by patient, mean of patient means, as if every row were another patient, median and quartiles. */
export function summariseNumbers(rows: readonly Row[]): NumberSummary {
  const values = rows.map(({ value }) => value);
  const patient = rows.map(({ person }) => person);
  if (values.length === 0)
    return {
      mean: none,
      patientMean: none,
      plain: none,
      median: medianOfRows(rows),
      quartiles: { lower: null, upper: null },
      deviation: null,
      notes: [],
    };
  const clustered = cr2Mean({ values, patient });
  const mean = meanOf(clustered, clustered.patients ?? 0);
  const byPatient = meanOf(patientMean({ values, patient }), mean.patients);
  const plainly = plainMean({ values });
  return {
    mean,
    patientMean: byPatient,
    plain: meanOf(plainly, mean.patients),
    median: medianOfRows(rows),
    quartiles: { lower: quantile({ values, p: 0.25 }).estimate, upper: quantile({ values, p: 0.75 }).estimate },
    deviation: plainly.se === null ? null : plainly.se * Math.sqrt(values.length),
    notes: meanNotes({ mean, patientMean: byPatient }),
  };
}

function meanOf({ estimate, se, df, lower, upper, n }: Omit<Mean, "patients">, patients: number): Mean {
  return { estimate, se, df, lower, upper, n, patients };
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
