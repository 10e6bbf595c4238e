import { sumOfSquares } from "../summary/centred";
import { addAt } from "./add-at";
import { cholesky, inverseOfCholesky, solveCholesky } from "./cholesky";
import { exactTerm, type SpanTerm, spanTerm } from "./normal-span";
import type { Spans } from "./require-spans";
import type { StandardisedDesign } from "./standardised-design";

/** Log times centred and scaled: y = (log time − centre) / spread; `from` may be −Infinity, `to` Infinity, equal when exact. */
export interface LogSpans {
  readonly from: Float64Array;
  readonly to: Float64Array;
  readonly centre: number;
  readonly spread: number;
}

/** The summit of the log-likelihood in (η coefficients, θ) of the standardised problem. */
export interface LogNormalFit {
  readonly parameters: Float64Array;
  readonly logLikelihood: number;
  readonly inverseInformation: Float64Array;
  readonly iterations: number;
}

const mostSteps = 60;
const closeEnough = 1e-10;
/** By so much of itself a log-likelihood may fall from rounding alone. */
const rounding = 1e-12;

/** @throws RangeError when every log time that can be told is the same */
export function logSpans(caller: string, { after, by }: Spans): LogSpans {
  const logFrom = after.map(Math.log);
  const logTo = by.map(Math.log);
  const told = logFrom.map((from, i) => pointIn(from, logTo[i] as number));
  const centre = told.reduce((sum, y) => sum + y / told.length, 0);
  const spread = Math.sqrt(sumOfSquares(told.map((y) => y - centre)) / told.length);
  if (!(spread > 1e-12)) throw new RangeError(`${caller} requires times that differ, received the same for every row`);
  const scaled = (y: number) => (y - centre) / spread;
  return { from: logFrom.map(scaled), to: logTo.map(scaled), centre, spread };
}

/** A log time to start from: the middle of what is known. */
function pointIn(from: number, to: number): number {
  if (to === Infinity) return from;
  return from === -Infinity ? to : (from + to) / 2;
}

/**
 * Newton's method with halved steps from the least-squares fit.
 * @throws RangeError when covariates explain each other or the times exactly, or when the likelihood has no summit
 */
export function fitLogNormal(caller: string, spans: LogSpans, design: StandardisedDesign): LogNormalFit {
  let parameters = startFrom(caller, spans, design);
  let here = climbAt(spans, design, parameters);
  for (let iterations = 1; iterations <= mostSteps; iterations++) {
    const factor = cholesky(here.information, parameters.length);
    if (factor === null) break;
    const step = solveCholesky(factor, here.score);
    const next = halvedUntilHigher(spans, design, parameters, step, here.logLikelihood);
    const moved = step.reduce((most, by, j) => Math.max(most, Math.abs(by) / (1 + Math.abs(parameters[j] as number))), 0);
    if (moved < closeEnough || next === null) {
      if (moved > Math.sqrt(closeEnough)) break;
      return { parameters, logLikelihood: here.logLikelihood, inverseInformation: inverseOfCholesky(factor, step.length), iterations };
    }
    parameters = next.parameters;
    here = next;
  }
  throw new RangeError(
    `${caller} requires a likelihood with a summit, received one that climbs without end: healed rows are missing at some value of a covariate`,
  );
}

function startFrom(caller: string, { from, to }: LogSpans, { x, k }: StandardisedDesign): Float64Array {
  const n = from.length;
  const gram = new Float64Array(k * k);
  const right = new Float64Array(k);
  const y = from.map((low, i) => pointIn(low, to[i] as number));
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < k; j++) {
      const xj = x[i * k + j] as number;
      right[j] = (right[j] as number) + xj * (y[i] as number);
      for (let m = 0; m < k; m++) gram[j * k + m] = (gram[j * k + m] as number) + xj * (x[i * k + m] as number);
    }
  }
  const factor = cholesky(gram, k);
  if (factor === null) throw new RangeError(`${caller} requires covariates that don't explain each other, received some that do`);
  const beta = solveCholesky(factor, right);
  let residual = 0;
  for (let i = 0; i < n; i++) residual += ((y[i] as number) - linear(x, i, beta, k)) ** 2 / n;
  if (!(residual > 1e-20))
    throw new RangeError(`${caller} requires times that the covariates don't explain exactly, received none left over`);
  const theta = 1 / Math.sqrt(residual);
  return Float64Array.from([...beta.map((b) => b * theta), theta]);
}

function linear(x: Float64Array, row: number, beta: ArrayLike<number>, k: number): number {
  let eta = 0;
  for (let j = 0; j < k; j++) eta += (x[row * k + j] as number) * (beta[j] as number);
  return eta;
}

interface Climb {
  readonly logLikelihood: number;
  readonly score: Float64Array;
  /** Minus the second derivatives, by rows; the lower triangle, which is all that Cholesky's method reads. */
  readonly information: Float64Array;
}

function climbAt(spans: LogSpans, { x, k }: StandardisedDesign, parameters: Float64Array): Climb {
  const size = k + 1;
  const score = new Float64Array(size);
  const information = new Float64Array(size * size);
  let logLikelihood = 0;
  eachTerm(spans, { x, k }, parameters, (row, term) => {
    logLikelihood += term[0] as number;
    for (let a = 0; a < k; a++) {
      const xa = x[row * k + a] as number;
      addAt(score, a, xa * (term[1] as number));
      for (let b = 0; b <= a; b++) addAt(information, a * size + b, -xa * (x[row * k + b] as number) * (term[3] as number));
      addAt(information, k * size + a, -xa * (term[4] as number));
    }
    addAt(score, k, term[2] as number);
    addAt(information, k * size + k, -(term[5] as number));
  });
  return { logLikelihood, score, information };
}

/** Goes through the rows with each one's log-likelihood and derivatives; `term` is written over from row to row. */
export function eachTerm(
  { from, to }: LogSpans,
  { x, k }: Pick<StandardisedDesign, "x" | "k">,
  parameters: Float64Array,
  use: (row: number, term: SpanTerm) => void,
): void {
  const theta = parameters[k] as number;
  const term = new Float64Array(6);
  for (let row = 0; row < from.length; row++) {
    const eta = linear(x, row, parameters, k);
    const [low, high] = [from[row] as number, to[row] as number];
    if (low === high) exactTerm(term, low, eta, theta);
    else spanTerm(term, low, high, eta, theta);
    use(row, term);
  }
}

/** The step, halved until the log-likelihood rises and θ stays above zero; null when nothing rises any more. */
function halvedUntilHigher(spans: LogSpans, design: StandardisedDesign, from: Float64Array, step: Float64Array, height: number) {
  for (let part = 1; part > 1e-6; part /= 2) {
    const parameters = from.map((value, j) => value + part * (step[j] as number));
    if ((parameters[design.k] as number) <= 0) continue;
    const there = climbAt(spans, design, parameters);
    if (there.logLikelihood >= height - rounding * Math.abs(height)) return { parameters, ...there };
  }
  return null;
}
