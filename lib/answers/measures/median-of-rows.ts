import { patientBootstrap } from "@/lib/stats";
import { seed } from "../healing/median-interval";
import { said } from "../healing/said";
import type { Median } from "../types";
import type { Row } from "./measured";

const repeats = 1999;

/** Median of rows that are all observed; with nothing censored its bounds are the median itself. */
export function medianOfRows(rows: readonly Row[]): Median {
  if (rows.length === 0) return { estimate: null, lower: null, upper: null, bounds: [null, null], notes: [] };
  const values = rows.map(({ value }) => value);
  const { estimate, lower, upper, notes } = patientBootstrap({
    values,
    patient: rows.map(({ person }) => person),
    statistic: "quantile",
    repeats,
    seed,
  });
  return { estimate, lower, upper, bounds: [estimate, estimate], notes: notes.map(said) };
}
