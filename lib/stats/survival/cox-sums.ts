import { addAt } from "./add-at";
import type { RiskSteps } from "./risk-steps";
import { rowsByStep } from "./sort-rows";
import type { StandardisedDesign } from "./standardised-design";

/** How events of one time are taken: as if their order were averaged over (Efron), or each against all at risk (Breslow). */
export type CoxTies = "efron" | "breslow";

export interface CoxProblem {
  readonly steps: RiskSteps;
  readonly event: ArrayLike<number>;
  /** Column 0 is ones and plays no part; `covariates` of them follow. */
  readonly design: StandardisedDesign;
  readonly ties: CoxTies;
}

/** Weighted sums over the rows at risk at a step, and over those with their event there: Σw, Σw·x, Σw·x·xᵀ (by rows). */
export interface RiskSums {
  readonly step: number;
  readonly events: number;
  readonly all: WeightedSums;
  readonly own: WeightedSums;
}

interface WeightedSums {
  weight: number;
  readonly first: Float64Array;
  readonly second: Float64Array;
}

/** Relative hazards exp(xβ − its largest value): only their proportions matter. */
export function relativeHazards({ design }: CoxProblem, beta: Float64Array): { weights: Float64Array; shift: number } {
  const { x, k } = design;
  const eta = new Float64Array(x.length / k);
  let shift = -Infinity;
  for (let row = 0; row < eta.length; row++) {
    let value = 0;
    for (let j = 0; j < beta.length; j++) value += (x[row * k + j + 1] as number) * (beta[j] as number);
    eta[row] = value;
    shift = Math.max(shift, value);
  }
  return { weights: eta.map((value) => Math.exp(value - shift)), shift };
}

/** Goes through the steps with events, last first, with the sums at each; the sums are written over from step to step. */
export function eachRiskSet({ steps, event, design }: CoxProblem, weights: Float64Array, use: (sums: RiskSums) => void): void {
  const covariates = design.k - 1;
  const leaving = rowsByStep(steps.exit, steps.time.length);
  const entering = rowsByStep(steps.start, steps.time.length);
  const all = emptySums(covariates);
  for (let step = steps.time.length - 1; step >= 0; step--) {
    const own = emptySums(covariates);
    for (let i = leaving.first[step] as number; i < (leaving.first[step + 1] as number); i++) {
      const row = leaving.rows[i] as number;
      addRow(all, design, row, weights[row] as number);
      if (event[row]) addRow(own, design, row, weights[row] as number);
    }
    if ((steps.events[step] as number) > 0) use({ step, events: steps.events[step] as number, all, own });
    // Going back in time a row leaves the risk set where it entered it.
    for (let i = entering.first[step] as number; i < (entering.first[step + 1] as number); i++) {
      const row = entering.rows[i] as number;
      addRow(all, design, row, -(weights[row] as number));
    }
  }
}

function emptySums(covariates: number): WeightedSums {
  return { weight: 0, first: new Float64Array(covariates), second: new Float64Array(covariates * covariates) };
}

function addRow(sums: WeightedSums, { x, k }: StandardisedDesign, row: number, weight: number): void {
  const p = k - 1;
  sums.weight += weight;
  for (let a = 0; a < p; a++) {
    const xa = weight * (x[row * k + a + 1] as number);
    addAt(sums.first, a, xa);
    for (let b = 0; b < p; b++) addAt(sums.second, a * p + b, xa * (x[row * k + b + 1] as number));
  }
}

/**
 * For each event of a step the part of the tied rows that is taken off the risk set: 0, 1/d, … (d − 1)/d by Efron, always 0 by Breslow.
 * Efron 1977, J Am Stat Assoc 72:557-565; Breslow 1974, Biometrics 30:89-99.
 */
export function partsTakenOff(events: number, ties: CoxTies): readonly number[] {
  return Array.from({ length: events }, (_, l) => (ties === "efron" ? l / events : 0));
}
