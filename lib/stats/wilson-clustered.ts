import type { Note } from "./notes";
import type { PatientLabels } from "./record";
import { requireConfidence } from "./require";
import { requireEvents } from "./shares/check-events";
import { type EffectiveNumber, effectiveNumber } from "./shares/effective-number";
import { scoreInterval } from "./shares/score-interval";
import { thresholds } from "./thresholds";

/**
 * A share of segments with Wilson's interval on the number of independent cases that the clustered ones are worth (n*).
 * Beside it the plain Wilson interval, as if every segment were another patient.
 * Wilson EB. J Am Stat Assoc 1927;22:209-212; n* after Korn EL, Graubard BI. Surv Methodol 1998;24:193-201.
 * @throws RangeError without rows, with unequal lengths, or an event that is neither 0 nor 1
 * @example wilsonClustered({ event: [1, 0, 0, 1], patient: ["a", "a", "b", "c"] }).estimate // => 0.5
 */
export function wilsonClustered({
  event,
  patient,
  confidence = 0.95,
}: {
  event: readonly number[];
  patient: PatientLabels;
  confidence?: number;
}) {
  requireEvents("wilsonClustered", event, patient);
  requireConfidence("wilsonClustered", confidence);
  const number = effectiveNumber(event, patient, confidence);
  return {
    ...limitsOf(number, confidence),
    se: null,
    df: null,
    x: number.x,
    n: number.n,
    patients: number.patients,
    deff: number.deff,
    nEffective: number.effective,
    plain: scoreInterval(number.x / number.n, number.n, confidence),
    method: "Wilson score interval on the effective number of cases, clustered by patient",
    convention: "n* = min(n, n/deff)·(z/t[G − 1])²; G when none or all have the event",
  };
}

function limitsOf({ x, n, patients, effective }: EffectiveNumber, confidence: number) {
  const estimate = x / n;
  if (patients >= thresholds.patientsForInterval) return { estimate, ...scoreInterval(estimate, effective, confidence), notes: [] };
  const notes: Note[] = [{ code: "too-few-for-interval", patients, needed: thresholds.patientsForInterval }];
  return { estimate, lower: null, upper: null, notes };
}
