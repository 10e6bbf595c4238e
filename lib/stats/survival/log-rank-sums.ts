import type { PatientIndex } from "../cluster/patients";
import { addAt } from "./add-at";
import type { Groups } from "./groups";
import type { RiskSteps } from "./risk-steps";

/** At risk at each step by group: `atRisk[group][step]`. */
export function atRiskByGroup({ start, exit, time }: RiskSteps, { code, labels }: Groups): readonly Float64Array[] {
  const change = labels.map(() => new Float64Array(time.length + 1));
  for (let row = 0; row < code.length; row++) {
    const group = change[code[row] as number] as Float64Array;
    addAt(group, start[row] as number, 1);
    addAt(group, (exit[row] as number) + 1, -1);
  }
  for (const group of change) for (let step = 1; step < time.length; step++) addAt(group, step, group[step - 1] as number);
  return change;
}

/** Observed and expected events by group, and the hypergeometric variance of their difference (groups × groups, by rows). */
export interface LogRankSums {
  readonly observed: Float64Array;
  readonly expected: Float64Array;
  readonly variance: Float64Array;
}

export function logRankSums(steps: RiskSteps, groups: Groups, event: ArrayLike<number>, byGroup: readonly Float64Array[]): LogRankSums {
  const k = byGroup.length;
  const observed = new Float64Array(k);
  const expected = new Float64Array(k);
  const variance = new Float64Array(k * k);
  for (let row = 0; row < event.length; row++) if (event[row]) addAt(observed, groups.code[row] as number, 1);
  for (let step = 0; step < steps.time.length; step++) {
    const [n, d] = [steps.atRisk[step] as number, steps.events[step] as number];
    if (d === 0) continue;
    const shares = byGroup.map((atRisk) => (atRisk[step] as number) / n);
    addStep(expected, variance, shares, d, n > 1 ? (d * (n - d)) / (n - 1) : 0);
  }
  return { observed, expected, variance };
}

function addStep(expected: Float64Array, variance: Float64Array, shares: readonly number[], events: number, spread: number): void {
  shares.forEach((share, i) => {
    addAt(expected, i, events * share);
    shares.forEach((other, j) => {
      addAt(variance, i * shares.length + j, spread * share * ((i === j ? 1 : 0) - other));
    });
  });
}

/**
 * Σ over patients of w·wᵀ, where a patient's w sums over its rows ∫ (own group − shares of the groups at risk) d(events − their compensator):
 * the variance of the log-rank score when rows of one patient go together (Lin, Wei 1989, J Am Stat Assoc 84:1074-1078, at no effect).
 */
export function logRankRobustVariance(
  steps: RiskSteps,
  groups: Groups,
  event: ArrayLike<number>,
  byGroup: readonly Float64Array[],
  patients: PatientIndex,
): Float64Array {
  const k = byGroup.length;
  const shared = byGroup.map((atRisk) => runningSum(steps, (step) => (atRisk[step] as number) / (steps.atRisk[step] as number)));
  const hazard = runningSum(steps, () => 1);
  const scores = new Float64Array(patients.count * k);
  for (let row = 0; row < event.length; row++) {
    const [start, exit] = [steps.start[row] as number, steps.exit[row] as number];
    const at = (patients.codes[row] as number) * k;
    for (let j = 0; j < k; j++) {
      const own = groups.code[row] === j ? 1 : 0;
      const compensator = own * between(hazard, start, exit) - between(shared[j] as Float64Array, start, exit);
      const share = (byGroup[j]?.[exit] as number) / (steps.atRisk[exit] as number);
      addAt(scores, at + j, (event[row] ? own - share : 0) - compensator);
    }
  }
  return sumOfOuterProducts(scores, k);
}

/** Running sum of weight · d/n over the steps with events. */
function runningSum({ atRisk, events }: RiskSteps, weight: (step: number) => number): Float64Array {
  let sum = 0;
  return atRisk.map((n, step) => {
    sum += (weight(step) * (events[step] as number)) / n;
    return sum;
  });
}

function between(running: Float64Array, start: number, exit: number): number {
  return (running[exit] as number) - (start === 0 ? 0 : (running[start - 1] as number));
}

/** Σ s·sᵀ over consecutive vectors of length k. */
export function sumOfOuterProducts(scores: Float64Array, k: number): Float64Array {
  const sums = new Float64Array(k * k);
  for (let at = 0; at < scores.length; at += k) {
    for (let a = 0; a < k; a++) {
      for (let b = 0; b < k; b++) addAt(sums, a * k + b, (scores[at + a] as number) * (scores[at + b] as number));
    }
  }
  return sums;
}
