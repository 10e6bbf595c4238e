import { estimate } from "@/lib/stats";
import type { Note } from "../types";
import { said } from "./said";

/** The seed of every interval that draws patients: one for all, so that an answer is the same whenever it is asked. */
export const seed = 1;

type Interval = { readonly lower: number | null; readonly upper: number | null; readonly notes: readonly Note[] };

/** Interval of the median of values that are all observed, one a row, each with its patient. */
export function medianInterval(values: readonly number[], patient: readonly number[]): Interval {
  const { records, notes } = estimate({ situation: "median", values, patient, seed, repeats: 1999 });
  const { lower = null, upper = null } = records.interval ?? {};
  return { lower, upper, notes: notes.map(said) };
}
