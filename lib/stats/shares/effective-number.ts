import { indexPatients, sumByPatient } from "../cluster/patients";
import { normalQuantile } from "../distributions/normal";
import { tQuantile } from "../distributions/student-t";
import type { PatientLabels } from "../record";

/** How many independent cases clustered ones are worth for an interval of a share. */
export interface EffectiveNumber {
  readonly x: number;
  readonly n: number;
  readonly patients: number;
  /** Variance of the share by patients over that of independent cases; null where the share is 0 or 1, or there is one patient. */
  readonly deff: number | null;
  readonly effective: number;
}

/**
 * n* = min(n, n/deff) · (z/t)², deff = v / (p(1 − p)/n), v = G/(G − 1) · Σ (x − p·m)² / n² over patients with x events in m cases,
 * z the normal and t the t(G − 1) quantile: few patients widen the interval. A share of 0 or 1 shows no spread: n* = G, the patients.
 * After Korn EL, Graubard BI. Surv Methodol 1998;24:193-201 (there with Clopper–Pearson).
 */
export function effectiveNumber(event: readonly number[], patient: PatientLabels, confidence: number): EffectiveNumber {
  const index = indexPatients(patient);
  const n = event.length;
  const patients = index.count;
  const sums = sumByPatient(index, event);
  const x = sums.reduce((sum, value) => sum + value, 0);
  if (x === 0 || x === n || patients < 2) return { x, n, patients, deff: null, effective: patients };
  const p = x / n;
  let spread = 0;
  sums.forEach((own, c) => {
    spread += (own - p * (index.rows[c] as number)) ** 2;
  });
  const deff = ((patients / (patients - 1)) * spread) / (n * p * (1 - p));
  const tail = 1 - (1 - confidence) / 2;
  const widening = (normalQuantile(tail) / tQuantile(tail, patients - 1)) ** 2;
  return { x, n, patients, deff, effective: Math.min(n, n / deff) * widening };
}
