import { backSubstituted, type Columns, fittedBy, forwardSubstituted, orthonormalised } from "../linear/least-squares";

/** A logistic model with intercept: p columns of n rows, and 0 or 1 a row. */
export interface LogisticData {
  readonly design: Columns;
  readonly event: readonly number[];
}

/** The penalised likelihood at one place: its logarithm, its slope, and the design weighted by the roots of the variances, as QR. */
export interface Place {
  readonly at: Float64Array;
  readonly logLikelihood: number;
  readonly score: Float64Array;
  readonly weighted: Columns;
  readonly leverages: Float64Array;
}

const mostSteps = 200;
const caller = "firthLogistic";

/**
 * Log likelihood + ½ log |information|, and its slope Σ (y − π + h(½ − π)) x, h the leverages. Firth D. Biometrika 1993;80:27-38.
 */
export function placeAt({ design, event }: LogisticData, at: Float64Array): Place {
  const eta = fittedBy(design, at);
  const roots = eta.map((value) => Math.sqrt(logistic(value) * logistic(-value)));
  const weighted = design.map((column) => column.map((value, i) => value * (roots[i] as number)));
  // Far out the weighted design has no rank left: the likelihood there is zero, and a climb turns back.
  const { q, r } = orthonormalised(weighted);
  const score = new Float64Array(at.length);
  const leverages = new Float64Array(event.length);
  let logLikelihood = 0;
  event.forEach((happened, i) => {
    const share = logistic(eta[i] as number);
    logLikelihood -= softplus(happened === 1 ? -(eta[i] as number) : (eta[i] as number));
    const leverage = q.reduce((sum, column) => sum + (column[i] as number) ** 2, 0);
    leverages[i] = leverage;
    const pull = happened - share + leverage * (0.5 - share);
    design.forEach((column, j) => {
      score[j] = (score[j] as number) + pull * (column[i] as number);
    });
  });
  for (let j = 0; j < at.length; j++) logLikelihood += Math.log(r[j * (at.length + 1)] as number);
  return { at, logLikelihood, score, weighted, leverages };
}

/** The highest place, with one coefficient held where it stands when `held` names it. Newton's steps, halved until they climb. */
export function climb(data: LogisticData, start: Float64Array, held: number | null = null): Place {
  let place = placeAt(data, start);
  for (let count = 0; count < mostSteps; count++) {
    const step = newtonStep(place, held);
    const largest = step.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const next = halvedUntilHigher(data, place, step, Math.min(1, 5 / largest));
    if (next === null || largest < 1e-12) return next ?? place;
    place = next;
  }
  throw new RangeError(`${caller} requires data on which the likelihood settles, received none after ${mostSteps} steps`);
}

/** Slope of the score⁻¹ × score over the free coefficients, by a QR; with the leverages held still each row counts 1 + h times. */
function newtonStep({ weighted, leverages, score }: Place, held: number | null): Float64Array {
  const free = Array.from(score.keys()).filter((j) => j !== held);
  const step = new Float64Array(score.length);
  if (free.length === 0) return step;
  const roots = leverages.map((leverage) => Math.sqrt(1 + leverage));
  // No check of rank here: where the weights vanish the step is only a direction, cut short and tried before it is taken.
  const { r } = orthonormalised(free.map((j) => (weighted[j] as Float64Array).map((value, i) => value * (roots[i] as number))));
  const halfway = forwardSubstituted(
    r,
    free.map((j) => score[j] as number),
  );
  backSubstituted(r, halfway).forEach((by, k) => {
    step[free[k] as number] = by;
  });
  return step;
}

function halvedUntilHigher(data: LogisticData, place: Place, step: Float64Array, first: number): Place | null {
  for (let part = first; part > 1e-12; part /= 2) {
    const next = placeAt(
      data,
      place.at.map((value, j) => value + part * (step[j] as number)),
    );
    if (next.logLikelihood >= place.logLikelihood - 1e-13 * Math.abs(place.logLikelihood)) return next;
  }
  return null;
}

function logistic(value: number): number {
  return value >= 0 ? 1 / (1 + Math.exp(-value)) : Math.exp(value) / (1 + Math.exp(value));
}

/** log(1 + eˣ) without overflow. */
function softplus(x: number): number {
  return Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));
}
