import { indexPatients, type PatientIndex, sumByPatient } from "./cluster/patients";
import { tQuantile } from "./distributions/student-t";
import type { Note } from "./notes";
import { requireRates } from "./rates/check-rates";
import { exactCountLimits } from "./rates/exact-count";
import type { PatientLabels } from "./record";
import { requireConfidence, requirePositive } from "./require";
import { thresholds } from "./thresholds";

interface Sums {
  readonly events: Float64Array;
  readonly exposure: Float64Array;
  readonly x: number;
  readonly e: number;
  /** Σ (x − R·e)² over patients, divided by the square of all events: the squared error of log R but for G/(G − 1). */
  readonly spread: number;
}

/**
 * Events over exposure, Σ events / Σ exposure, with an interval by patient: the ratio of sums linearised on the log scale, t on G − 1 df.
 * With no event, or when every patient has the same rate, the spread is zero and the exact Poisson limit stands in, marked plain.
 * Cochran WG. Sampling Techniques, 3rd ed., 1977, ch. 6 (ratio estimator); Garwood F. Biometrika 1936;28:437-442 (exact).
 * @param per the rate is given per so much exposure (10 for "per 10 cm")
 * @throws RangeError without rows, with unequal lengths, a count that isn't whole or an exposure that isn't above zero
 * @example eventRate({ events: [1, 0, 2], exposure: [4, 5, 6], patient: ["a", "b", "c"], per: 10 }).estimate // => 2
 */
export function eventRate({
  events,
  exposure,
  patient,
  per = 1,
  confidence = 0.95,
}: {
  events: readonly number[];
  exposure: readonly number[];
  patient: PatientLabels;
  per?: number;
  confidence?: number;
}) {
  requireRates("eventRate", events, exposure, patient);
  requirePositive("eventRate", "per", per);
  requireConfidence("eventRate", confidence);
  const index = indexPatients(patient);
  const sums = sumsOf(index, events, exposure);
  return {
    ...intervalOf(sums, index.count, per, confidence),
    events: sums.x,
    exposure: sums.e,
    n: events.length,
    patients: index.count,
    patientsWithEvents: sums.events.filter((own) => own > 0).length,
    dispersion: dispersionOf(sums, index.count),
    method: "ratio of events to exposure, linearised variance by patient on the log scale, t(G − 1)",
  };
}

function intervalOf(sums: Sums, patients: number, per: number, confidence: number) {
  const { x, e, spread } = sums;
  const estimate = (x / e) * per;
  if (patients < thresholds.patientsForInterval) {
    const note: Note = { code: "too-few-for-interval", patients, needed: thresholds.patientsForInterval };
    return { estimate, se: null, df: null, seLog: null, lower: null, upper: null, notes: [note] };
  }
  if (x === 0 || spread < 1e-24) return plainInterval(sums, per, confidence);
  const df = patients - 1;
  const seLog = Math.sqrt((patients / df) * spread);
  const factor = Math.exp(tQuantile(1 - (1 - confidence) / 2, df) * seLog);
  return { estimate, se: estimate * seLog, df, seLog, lower: estimate / factor, upper: estimate * factor, notes: fewWithEvents(sums) };
}

function plainInterval(sums: Sums, per: number, confidence: number) {
  const { lower, upper } = exactCountLimits(sums.x, confidence);
  const unit = per / sums.e;
  const because = sums.x === 0 ? "no event" : "every patient has the same rate";
  const notes: Note[] = [{ code: "plain-limit", because }, ...fewWithEvents(sums)];
  return { estimate: sums.x * unit, se: null, df: null, seLog: null, lower: lower * unit, upper: upper * unit, notes };
}

function fewWithEvents({ events }: Sums): Note[] {
  const patients = events.filter((own) => own > 0).length;
  return patients < thresholds.patientsWithEvents ? [{ code: "events-in-few-patients", patients }] : [];
}

/** Pearson's χ² of the patients' events against equal rates, over its df: above 1 events keep together more than chance would. */
function dispersionOf({ events, exposure, x, e }: Sums, patients: number): number | null {
  if (x === 0 || patients < 2) return null;
  const expected = exposure.map((own) => (own * x) / e);
  return events.reduce((sum, own, c) => sum + (own - (expected[c] as number)) ** 2 / (expected[c] as number), 0) / (patients - 1);
}

function sumsOf(index: PatientIndex, rowEvents: readonly number[], rowExposure: readonly number[]): Sums {
  const events = sumByPatient(index, rowEvents);
  const exposure = sumByPatient(index, rowExposure);
  const x = events.reduce((sum, own) => sum + own, 0);
  const e = exposure.reduce((sum, own) => sum + own, 0);
  const spread = x === 0 ? 0 : events.reduce((sum, own, c) => sum + (own / x - (exposure[c] as number) / e) ** 2, 0);
  return { events, exposure, x, e, spread };
}
