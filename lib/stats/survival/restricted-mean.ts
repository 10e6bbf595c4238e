import type { PatientIndex } from "../cluster/patients";
import { addAt } from "./add-at";
import type { RiskSteps } from "./risk-steps";

/** Area under a survival curve up to `tau`, and each patient's influence on it. */
export interface RestrictedMean {
  readonly estimate: number;
  /** One number a patient; the squares sum to the variance. */
  readonly influence: Float64Array;
}

/**
 * ∫ S from 0 to tau, in the unit of the times; null when tau lies beyond the last time and the curve has not reached zero there.
 * The influence of a row is the area to the right of each step weighted with the row's influence on the curve's logarithm; for one row
 * a patient the squares add up to Σ (area right of t)² · d/(n(n − d)).
 */
export function restrictedMean(
  steps: RiskSteps,
  survival: Float64Array,
  event: ArrayLike<number>,
  patients: PatientIndex,
  tau: number,
): RestrictedMean | null {
  const last = survival.length - 1;
  if (tau > (steps.time[last] as number) && (survival[last] as number) > 0) return null;
  const right = areasToTheRight(steps.time, survival, tau);
  const { running, own } = weightedGreenwood(steps, right);
  const influence = new Float64Array(patients.count);
  for (let row = 0; row < steps.exit.length; row++) {
    const [exit, start] = [steps.exit[row] as number, steps.start[row] as number];
    const before = start === 0 ? 0 : (running[start - 1] as number);
    const change = (running[exit] as number) - before - (event[row] ? (own[exit] as number) : 0);
    addAt(influence, patients.codes[row] as number, change);
  }
  return { estimate: Math.min(tau, steps.time[0] as number) + (right[0] as number), influence };
}

/** Area under the curve from each step to tau. */
function areasToTheRight(time: Float64Array, survival: Float64Array, tau: number): Float64Array {
  const right = new Float64Array(time.length);
  let [area, end] = [0, tau];
  for (let step = time.length - 1; step >= 0; step--) {
    const from = time[step] as number;
    if (from < end) {
      area += (end - from) * (survival[step] as number);
      end = from;
    }
    right[step] = area;
  }
  return right;
}

/** Running Σ area · d/(n(n − d)), and area/(n − d) for a row with its own event at the step; zero after tau and where nobody is left. */
function weightedGreenwood({ atRisk, events }: RiskSteps, right: Float64Array): { running: Float64Array; own: Float64Array } {
  const running = new Float64Array(right.length);
  const own = new Float64Array(right.length);
  let sum = 0;
  for (let step = 0; step < right.length; step++) {
    const [n, d] = [atRisk[step] as number, events[step] as number];
    if (d < n) {
      own[step] = (right[step] as number) / (n - d);
      sum += ((right[step] as number) * d) / (n * (n - d));
    }
    running[step] = sum;
  }
  return { running, own };
}
