import { sumOfSquares } from "../summary/centred";
import { addAt } from "./add-at";
import type { CandidateSpans } from "./candidate-spans";

export interface TurnbullFit {
  /** Share of each candidate; they sum to one. */
  readonly mass: Float64Array;
  readonly logLikelihood: number;
  readonly iterations: number;
  /** The log-likelihood lies at most this far below its summit. */
  readonly gap: number;
}

const mostSteps = 20_000;
const closeEnough = 1e-9;

/**
 * Self-consistent shares (the EM algorithm of Turnbull), its steps stretched by squared extrapolation.
 * With gⱼ = Σ 1/P(row) over the rows that cover candidate j, the summit has gⱼ = n where there is mass and gⱼ ≤ n elsewhere, and the
 * log-likelihood is never more than max gⱼ − n below it: that is what is driven to zero.
 * Varadhan, Roland 2008, Scand J Stat 35:335-353; Gentleman, Geyer 1994, Biometrika 81:618-623.
 * @throws RangeError when the summit is not reached
 */
export function fitTurnbull(caller: string, spans: CandidateSpans): TurnbullFit {
  const rows = spans.first.length;
  let mass: Float64Array = new Float64Array(spans.from.length).fill(1 / spans.from.length);
  for (let iterations = 1; iterations <= mostSteps; iterations++) {
    const here = gradientAt(spans, mass);
    const gap = here.gradient.reduce((most, g) => Math.max(most, g), 0) - rows;
    if (gap <= closeEnough * rows) return { mass, logLikelihood: here.logLikelihood, iterations, gap };
    mass = stretched(spans, mass, here.gradient, rows);
  }
  throw new RangeError(`${caller} requires spans whose likelihood is climbed in ${mostSteps} steps, received a slower one`);
}

function gradientAt({ first, last, from }: CandidateSpans, mass: Float64Array): { gradient: Float64Array; logLikelihood: number } {
  const below = new Float64Array(from.length + 1);
  for (let j = 0; j < from.length; j++) below[j + 1] = (below[j] as number) + (mass[j] as number);
  const change = new Float64Array(from.length + 1);
  let logLikelihood = 0;
  for (let row = 0; row < first.length; row++) {
    const [a, b] = [first[row] as number, last[row] as number];
    const chance = (below[b + 1] as number) - (below[a] as number);
    logLikelihood += Math.log(chance);
    addAt(change, a, 1 / chance);
    addAt(change, b + 1, -1 / chance);
  }
  for (let j = 1; j < from.length; j++) addAt(change, j, change[j - 1] as number);
  return { gradient: change.subarray(0, from.length), logLikelihood };
}

/** Two steps of the algorithm, then one along the way they bend; kept only when it climbs at least as high as the two. */
function stretched(spans: CandidateSpans, mass: Float64Array, gradient: Float64Array, rows: number): Float64Array {
  const once = mass.map((share, j) => (share * (gradient[j] as number)) / rows);
  const second = gradientAt(spans, once);
  const twice = once.map((share, j) => (share * (second.gradient[j] as number)) / rows);
  const step = once.map((share, j) => share - (mass[j] as number));
  const bend = twice.map((share, j) => share - 2 * (once[j] as number) + (mass[j] as number));
  const [length, bent] = [Math.sqrt(sumOfSquares(step)), Math.sqrt(sumOfSquares(bend))];
  if (bent === 0) return twice;
  const reach = Math.min(-1, -length / bent);
  const far = mass.map((share, j) => share - 2 * reach * (step[j] as number) + reach * reach * (bend[j] as number));
  const proposal = positive(far);
  return gradientAt(spans, proposal).logLikelihood >= gradientAt(spans, twice).logLikelihood ? proposal : twice;
}

/** Shares above zero that sum to one: a share of zero could never grow again. */
function positive(mass: Float64Array): Float64Array {
  const kept = mass.map((share) => Math.max(share, 1e-300));
  const sum = kept.reduce((total, share) => total + share, 0);
  return kept.map((share) => share / sum);
}
