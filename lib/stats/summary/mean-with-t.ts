import type { Note } from "../notes";
import { thresholds } from "../thresholds";
import { centred, sumOfSquares } from "./centred";
import { noInterval, tInterval } from "./t-interval";

/**
 * Mean of independent values with SD/√n and Student's t on n − 1 df; no interval below three patients.
 * @param patients how many patients the values come from
 */
export function meanWithT(values: readonly number[], patients: number, confidence: number) {
  const { mean, scale, residuals, constant } = centred(values);
  if (patients < thresholds.patientsForInterval) {
    const note: Note = { code: "too-few-for-interval", patients, needed: thresholds.patientsForInterval };
    return { estimate: mean, ...noInterval, notes: [note] };
  }
  const df = values.length - 1;
  const se = Math.sqrt(sumOfSquares(residuals) / df / values.length) * scale;
  const notes: readonly Note[] = constant ? [{ code: "constant-values" }] : [];
  return { estimate: mean, se, df, ...tInterval(mean, se, df, confidence), notes };
}
