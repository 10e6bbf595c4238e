import type { PatientIndex } from "../cluster/patients";
import { addAt } from "./add-at";
import { patientProducts } from "./patient-products";
import type { RiskSteps } from "./risk-steps";
import { rowsByStep } from "./sort-rows";

/** Cumulative incidence of one cause at each step: Σ S(before)·d/n. */
export function incidenceAtSteps({ atRisk }: RiskSteps, survival: Float64Array, ofCause: Float64Array): Float64Array {
  let sum = 0;
  return atRisk.map((n, step) => {
    const before = step === 0 ? 1 : (survival[step - 1] as number);
    sum += (before * (ofCause[step] as number)) / n;
    return sum;
  });
}

/** Rows with the event `cause` at each step. */
export function eventsOfCause({ exit, time }: RiskSteps, event: ArrayLike<number>, cause: number): Float64Array {
  const counts = new Float64Array(time.length);
  for (let row = 0; row < exit.length; row++) if (event[row] === cause) addAt(counts, exit[row] as number, 1);
  return counts;
}

export interface IncidenceInput {
  readonly steps: RiskSteps;
  readonly survival: Float64Array;
  readonly event: ArrayLike<number>;
  readonly patients: PatientIndex;
}

/**
 * Standard error of the incidence of `cause` at each step: infinitesimal jackknife summed within patients (R's `survfit(id, influence = TRUE)`, rows summed).
 * With b a row's influence on −log S and p what it did to the incidence directly plus Σ db·F(then), its influence on F(t) is p − F(t)·b.
 * Rows at risk share a running part, G for p and H for b, so a patient is kept as three numbers: p, b and its rows at risk.
 */
export function incidenceErrors({ steps, survival, event, patients }: IncidenceInput, cause: number): Float64Array {
  const ofCause = eventsOfCause(steps, event, cause);
  const incidence = incidenceAtSteps(steps, survival, ofCause);
  const running = runningParts(steps, survival, ofCause, incidence);
  const entering = rowsByStep(steps.start, steps.time.length);
  const leaving = rowsByStep(steps.exit, steps.time.length);
  const sums = patientProducts(patients.count, 3);
  const code = (row: number) => patients.codes[row] as number;
  return incidence.map((share, step) => {
    const [pBefore, bBefore] = step === 0 ? [0, 0] : [running.p[step - 1] as number, running.b[step - 1] as number];
    for (let i = entering.first[step] as number; i < (entering.first[step + 1] as number); i++) {
      sums.add(code(entering.rows[i] as number), [pBefore, bBefore, 1]);
    }
    const [p, b] = [running.p[step] as number, running.b[step] as number];
    for (let i = leaving.first[step] as number; i < (leaving.first[step + 1] as number); i++) {
      const row = leaving.rows[i] as number;
      const own = ownPart(steps, survival, step, event[row] as number, cause, share);
      sums.add(code(row), [own.p - p, own.b - b, -1]);
    }
    return Math.sqrt(sums.sumOfSquares([1, -share, share * b - p]));
  });
}

/** What every row at risk takes on from the steps so far. */
function runningParts({ atRisk, events }: RiskSteps, survival: Float64Array, ofCause: Float64Array, incidence: Float64Array) {
  const p = new Float64Array(atRisk.length);
  const b = new Float64Array(atRisk.length);
  let [sumP, sumB] = [0, 0];
  for (let step = 0; step < atRisk.length; step++) {
    const [n, d] = [atRisk[step] as number, events[step] as number];
    const before = step === 0 ? 1 : (survival[step - 1] as number);
    sumP += (before * (ofCause[step] as number)) / (n * n);
    if (d < n) {
      sumB += d / (n * (n - d));
      sumP += ((incidence[step] as number) * d) / (n * (n - d));
    }
    p[step] = sumP;
    b[step] = sumB;
  }
  return { p, b };
}

/** What a row's own event adds at its step; nothing when it is censored there. */
function ownPart({ atRisk, events }: RiskSteps, survival: Float64Array, step: number, event: number, cause: number, incidence: number) {
  if (event === 0) return { p: 0, b: 0 };
  const [n, d] = [atRisk[step] as number, events[step] as number];
  const before = step === 0 ? 1 : (survival[step - 1] as number);
  const b = d < n ? 1 / (n - d) : 0;
  return { p: (event === cause ? before / n : 0) + b * incidence, b };
}
