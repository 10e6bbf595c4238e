import { addAt } from "./add-at";
import { type CoxProblem, eachRiskSet, partsTakenOff, relativeHazards } from "./cox-sums";

/** What each step adds to the compensator of a row at risk: hazard Σ 1/s₀ and hazard-weighted means Σ x̄/s₀; for tied rows, less their parts. */
interface StepHazards {
  readonly hazard: Float64Array;
  readonly mean: Float64Array;
  readonly tiedHazard: Float64Array;
  readonly tiedMean: Float64Array;
  /** Mean of the covariates that an event of the step is held against. */
  readonly atEvent: Float64Array;
}

/**
 * Score residuals, rows × covariates: what each row adds to the score through its event and its time at risk. They sum to zero.
 * Therneau, Grambsch, Fleming 1990, Biometrika 77:147-160, with Efron's ties as in Therneau, Grambsch 2000, Modeling Survival Data, 3.6.
 */
export function coxScores(problem: CoxProblem, beta: Float64Array): Float64Array {
  const { steps, event, design } = problem;
  const p = beta.length;
  const { weights } = relativeHazards(problem, beta);
  const at = stepHazards(problem, weights);
  const running = { hazard: runningSums(at.hazard, 1), mean: runningSums(at.mean, p) };
  const scores = new Float64Array(weights.length * p);
  for (let row = 0; row < weights.length; row++) {
    const [exit, start, weight] = [steps.exit[row] as number, steps.start[row] as number, weights[row] as number];
    const last = event[row] ? exit - 1 : exit;
    for (let j = 0; j < p; j++) {
      const x = design.x[row * design.k + j + 1] as number;
      let score = -weight * (x * between(running.hazard, start, last, 1, 0) - between(running.mean, start, last, p, j));
      if (event[row]) {
        score += x - (at.atEvent[exit * p + j] as number);
        score -= weight * (x * (at.tiedHazard[exit] as number) - (at.tiedMean[exit * p + j] as number));
      }
      scores[row * p + j] = score;
    }
  }
  return scores;
}

function stepHazards(problem: CoxProblem, weights: Float64Array): StepHazards {
  const p = problem.design.k - 1;
  const steps = problem.steps.time.length;
  const [hazard, tiedHazard] = [new Float64Array(steps), new Float64Array(steps)];
  const [mean, tiedMean, atEvent] = [new Float64Array(steps * p), new Float64Array(steps * p), new Float64Array(steps * p)];
  eachRiskSet(problem, weights, ({ step, events, all, own }) => {
    for (const part of partsTakenOff(events, problem.ties)) {
      const total = all.weight - part * own.weight;
      addAt(hazard, step, 1 / total);
      addAt(tiedHazard, step, (1 - part) / total);
      for (let j = 0; j < p; j++) {
        const centre = ((all.first[j] as number) - part * (own.first[j] as number)) / total;
        addAt(mean, step * p + j, centre / total);
        addAt(tiedMean, step * p + j, ((1 - part) * centre) / total);
        addAt(atEvent, step * p + j, centre / events);
      }
    }
  });
  return { hazard, mean, tiedHazard, tiedMean, atEvent };
}

function runningSums(values: Float64Array, width: number): Float64Array {
  const sums = values.slice();
  for (let i = width; i < sums.length; i++) addAt(sums, i, sums[i - width] as number);
  return sums;
}

/** Sum over the steps from `start` to `last`, both included; zero when there are none. */
function between(running: Float64Array, start: number, last: number, width: number, column: number): number {
  if (last < start) return 0;
  return (running[last * width + column] as number) - (start === 0 ? 0 : (running[(start - 1) * width + column] as number));
}
