import { thresholds } from "@/lib/stats";
import type { Note } from "../types";
import type { Measured } from "./summaries";

/** Interval of the median of a fully observed group: patient bootstrap, from twenty patients on. */
export function medianInterval(measured: readonly Measured[]): { lower: number | null; upper: number | null; notes: readonly Note[] } {
  const patients = new Set(measured.map(({ person }) => person)).size;
  if (patients < thresholds.patientsForBootstrap)
    return { lower: null, upper: null, notes: [{ code: "too-few-for-interval", text: "Too few patients for an interval of the median." }] };
  return { lower: null, upper: null, notes: [] };
}
