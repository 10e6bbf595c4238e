import { addAt } from "./add-at";
import { cholesky, inverseOfCholesky, solveCholesky } from "./cholesky";
import { type CoxProblem, eachRiskSet, partsTakenOff, type RiskSums, relativeHazards } from "./cox-sums";

export interface CoxFit {
  /** For the standardised covariates. */
  readonly beta: Float64Array;
  readonly logLikelihood: number;
  readonly nullLogLikelihood: number;
  readonly inverseInformation: Float64Array;
  readonly iterations: number;
}

interface Climb {
  logLikelihood: number;
  readonly score: Float64Array;
  readonly information: Float64Array;
}

const mostSteps = 40;
const closeEnough = 1e-10;

/**
 * Newton's method with halved steps from no effect; the partial likelihood is concave.
 * @throws RangeError when covariates explain each other, or the likelihood climbs without end (a covariate separates who has the event)
 */
export function fitCox(caller: string, problem: CoxProblem): CoxFit {
  const p = problem.design.k - 1;
  let beta: Float64Array = new Float64Array(p);
  let here = climbAt(problem, beta);
  const nullLogLikelihood = here.logLikelihood;
  for (let iterations = 1; iterations <= mostSteps; iterations++) {
    const factor = cholesky(here.information, p);
    if (factor === null) break;
    const step = solveCholesky(factor, here.score);
    const moved = step.reduce((most, by) => Math.max(most, Math.abs(by)), 0);
    if (moved < closeEnough) {
      return { beta, logLikelihood: here.logLikelihood, nullLogLikelihood, inverseInformation: inverseOfCholesky(factor, p), iterations };
    }
    const next = halvedUntilHigher(problem, beta, step, here.logLikelihood);
    if (next === null) break;
    beta = next.beta;
    here = next.climb;
  }
  throw new RangeError(
    `${caller} requires covariates that don't explain each other nor separate who has the event, received a likelihood without a summit`,
  );
}

/** Rounding may lower the last step by a hair: that is not a descent. */
function halvedUntilHigher(problem: CoxProblem, from: Float64Array, step: Float64Array, height: number) {
  for (let part = 1; part > 1e-6; part /= 2) {
    const beta = from.map((value, j) => value + part * (step[j] as number));
    const climb = climbAt(problem, beta);
    if (climb.logLikelihood >= height - 1e-12 * Math.abs(height)) return { beta, climb };
  }
  return null;
}

function climbAt(problem: CoxProblem, beta: Float64Array): Climb {
  const { design, event } = problem;
  const p = beta.length;
  const climb: Climb = { logLikelihood: 0, score: new Float64Array(p), information: new Float64Array(p * p) };
  const { weights, shift } = relativeHazards(problem, beta);
  for (let row = 0; row < weights.length; row++) {
    if (!event[row]) continue;
    climb.logLikelihood += Math.log(weights[row] as number) + shift;
    for (let j = 0; j < p; j++) addAt(climb.score, j, design.x[row * design.k + j + 1] as number);
  }
  eachRiskSet(problem, weights, (sums) => {
    for (const part of partsTakenOff(sums.events, problem.ties)) takeRiskSet(climb, sums, part, shift);
  });
  return climb;
}

function takeRiskSet(climb: Climb, { all, own }: RiskSums, part: number, shift: number): void {
  const p = all.first.length;
  const weight = all.weight - part * own.weight;
  climb.logLikelihood -= Math.log(weight) + shift;
  for (let a = 0; a < p; a++) {
    const meanA = ((all.first[a] as number) - part * (own.first[a] as number)) / weight;
    addAt(climb.score, a, -meanA);
    for (let b = 0; b < p; b++) {
      const meanB = ((all.first[b] as number) - part * (own.first[b] as number)) / weight;
      const square = ((all.second[a * p + b] as number) - part * (own.second[a * p + b] as number)) / weight;
      addAt(climb.information, a * p + b, square - meanA * meanB);
    }
  }
}
