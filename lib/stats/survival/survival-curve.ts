import type { PatientIndex } from "../cluster/patients";
import { patientProducts } from "./patient-products";
import type { RiskSteps } from "./risk-steps";
import { rowsByStep } from "./sort-rows";

/** Product-limit curve: share without the event after each step. Somebody is at risk at every step: the row whose time it is. */
export function survivalAtSteps({ atRisk, events }: Pick<RiskSteps, "atRisk" | "events">): Float64Array {
  let survival = 1;
  return Float64Array.from(atRisk, (n, step) => {
    const d = events[step] as number;
    survival *= (n - d) / n;
    return survival;
  });
}

/**
 * Standard error of the curve at each step: infinitesimal jackknife summed within patients; zero where the curve is 1 or 0.
 * A row's influence on log S(t) is −Σ over s ≤ t of (event at s − at risk at s · d/n) / (n − d). With one row a patient the squares
 * add up to Greenwood's Σ d / (n(n − d)) exactly, because increments at different times are uncorrelated.
 * Each patient's sum is b − m·H(t): m its rows at risk, H the running Greenwood sum, b what its ended rows left behind.
 */
export function survivalErrors(steps: RiskSteps, survival: Float64Array, event: ArrayLike<number>, patients: PatientIndex): Float64Array {
  const entering = rowsByStep(steps.start, steps.time.length);
  const leaving = rowsByStep(steps.exit, steps.time.length);
  const sums = patientProducts(patients.count, 2);
  const code = (row: number) => patients.codes[row] as number;
  let greenwood = 0;
  return Float64Array.from(survival, (share, step) => {
    for (let i = entering.first[step] as number; i < (entering.first[step + 1] as number); i++) {
      sums.add(code(entering.rows[i] as number), [greenwood, 1]);
    }
    if (share === 0) return 0; // and it stays there, whoever enters later
    const [n, d] = [steps.atRisk[step] as number, steps.events[step] as number];
    greenwood += d / (n * (n - d));
    for (let i = leaving.first[step] as number; i < (leaving.first[step + 1] as number); i++) {
      const row = leaving.rows[i] as number;
      const own = event[row] ? 1 / (n - d) : 0;
      sums.add(code(row), [own - greenwood, -1]);
    }
    return share * Math.sqrt(sums.sumOfSquares([1, -greenwood]));
  });
}
