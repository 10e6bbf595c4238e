import { patientBootstrap } from "@/lib/stats";
import type { Note } from "../types";
import type { Measured } from "./read";
import { said } from "./said";

/** The seed of every interval that draws patients: one for all, so that an answer is the same whenever it is asked. */
export const seed = 1;

/** Interval of the median of a fully observed group: patient bootstrap, from twenty patients on. */
export function medianInterval(measured: readonly Measured[]): { lower: number | null; upper: number | null; notes: readonly Note[] } {
  const { lower, upper, notes } = patientBootstrap({
    values: measured.map(({ value }) => value),
    patient: measured.map(({ person }) => person),
    statistic: "quantile",
    repeats: 1999,
    seed,
  });
  return { lower, upper, notes: notes.map(said) };
}
