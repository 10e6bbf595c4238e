import { type Columns, coefficientsOf, type Factored, factored, fittedBy } from "./least-squares";
import { type Link, type LinkFunctions, links } from "./links";

/** A fitted generalised linear model, with the weighted design and residuals that a robust variance is built on. */
export interface GlmFit {
  readonly coefficients: Float64Array;
  readonly factors: Factored;
  /** (y − mean)/√(working variance / weight): orthogonal to the columns of Q. */
  readonly residuals: Float64Array;
  /** Working variance / weight of each row. */
  readonly variance: Float64Array;
}

interface GlmInput {
  readonly design: Columns;
  readonly y: Float64Array;
  readonly link: Link;
  readonly weights: ArrayLike<number>;
  readonly offset: ArrayLike<number>;
}

const MOST_STEPS = 60;

/**
 * Least squares where the link is the identity; any other by iteratively reweighted least squares, each step by QR.
 * McCullagh P, Nelder JA. Generalized Linear Models, 2nd ed., 1989, section 2.5.
 * @throws RangeError when the outcome is separated by the columns (no finite estimate exists) or columns are combinations of one another
 */
export function fitGlm(caller: string, input: GlmInput): GlmFit {
  return input.link === "identity" ? leastSquares(caller, input) : reweighted(caller, input);
}

/** One step: nothing of it depends on the coefficients. */
function leastSquares(caller: string, { design, y, weights, offset }: GlmInput): GlmFit {
  const inverse = Float64Array.from(weights);
  const roots = inverse.map(Math.sqrt);
  const factors = factored(caller, weighted(design, roots));
  const response = y.map((value, i) => (value - (offset[i] as number)) * (roots[i] as number));
  const coefficients = coefficientsOf(factors, response);
  const linear = fittedBy(design, coefficients);
  const residuals = response.map((value, i) => value - (linear[i] as number) * (roots[i] as number));
  return { coefficients, factors, residuals, variance: inverse.map((weight) => 1 / weight) };
}

function reweighted(caller: string, input: GlmInput): GlmFit {
  const link = links[input.link];
  let eta: Float64Array = input.y.map(link.start);
  let step = weightedStep(caller, input, link, eta);
  for (let count = 1; count <= MOST_STEPS; count++) {
    const next = linearPart(input, step.coefficients);
    requireInside(caller, input, next);
    const moved = largestMove(eta, next);
    eta = next;
    if (moved < 1e-11) return finished(input, link, eta, step);
    step = weightedStep(caller, input, link, eta);
  }
  throw separated(caller);
}

function weightedStep(caller: string, input: GlmInput, link: LinkFunctions, eta: Float64Array) {
  const roots = rootWeights(input, link, eta);
  const response = eta.map((value, i) => {
    const residual = (input.y[i] as number) - link.mean(value);
    return (roots[i] as number) * (value - (input.offset[i] as number) + residual / link.slope(value));
  });
  const factors = factored(caller, weighted(input.design, roots));
  return { coefficients: coefficientsOf(factors, response), factors };
}

/** The factors of the last step serve: they belong to a linear part that no longer moves. */
function finished(input: GlmInput, link: LinkFunctions, eta: Float64Array, step: ReturnType<typeof weightedStep>): GlmFit {
  const fitted = eta.map(link.mean);
  const variance = fitted.map((mean, i) => link.variance(mean) / (input.weights[i] as number));
  const residuals = fitted.map((mean, i) => ((input.y[i] as number) - mean) / Math.sqrt(variance[i] as number));
  return { ...step, residuals, variance };
}

/** √(weight · slope² / variance) */
function rootWeights({ weights }: GlmInput, link: LinkFunctions, eta: Float64Array): Float64Array {
  return eta.map((value, i) => link.slope(value) * Math.sqrt((weights[i] as number) / link.variance(link.mean(value))));
}

function weighted(design: Columns, roots: Float64Array): Columns {
  if (roots.every((root) => root === 1)) return design;
  return design.map((column) => column.map((value, i) => value * (roots[i] as number)));
}

function linearPart({ design, offset }: GlmInput, coefficients: Float64Array): Float64Array {
  return fittedBy(design, coefficients).map((value, i) => value + (offset[i] as number));
}

function largestMove(before: Float64Array, after: Float64Array): number {
  return before.reduce((most, value, i) => Math.max(most, Math.abs(value - (after[i] as number))), 0);
}

/**
 * A linear part that runs away is a fitted value going to its edge: the estimate is infinite.
 * On the log scale that is a ratio of e²⁰ between fitted values, on the logit scale a probability within e⁻²⁵ of 0 or 1.
 */
function requireInside(caller: string, { link, offset }: GlmInput, eta: Float64Array): void {
  let [least, most] = [Infinity, -Infinity];
  eta.forEach((value, i) => {
    least = Math.min(least, value - (offset[i] as number));
    most = Math.max(most, value - (offset[i] as number));
  });
  const inside = link === "log" ? most - least < 20 : Math.max(most, -least) < 25;
  if (!inside) throw separated(caller);
}

function separated(caller: string): RangeError {
  return new RangeError(`${caller} requires an outcome that the columns don't separate, received one whose fitted values go to the edge`);
}
