import type { PatientIndex } from "../cluster/patients";
import { sumsOfSquaresByPatient } from "./mean-squares";

const gridSteps = 400;

/**
 * Variance between patients and within them, by restricted maximum likelihood of the one-way random model, for unequal numbers of values.
 * One number is searched, λ = between/within: a grid on λ/(1 + λ) finds the best stretch (0 included), halving of the slope ends it.
 * With one value a patient the likelihood is flat in λ: all is `within`, and the sum is the sample variance.
 * Patterson HD, Thompson R. Biometrika 1971;58:545-554; Searle SR, Casella G, McCulloch CE. Variance Components 1992, chapter 3.
 * @param residuals values less a common mean
 */
export function varianceParts(residuals: Float64Array, index: PatientIndex): { between: number; within: number } {
  const { means, within: inside } = sumsOfSquaresByPatient(residuals, index);
  const n = residuals.length;
  if (inside === 0 && n > index.count) return { between: sampleVariance(means), within: 0 };
  const model = (lambda: number) => reml(lambda, means, index.rows, inside, n);
  const ratio = (place: number) => place / (gridSteps - place);
  let best = 0;
  for (let place = 1; place < gridSteps; place++) if (model(ratio(place)).deviance < model(ratio(best)).deviance - 1e-12) best = place;
  const lambda = flatSpot((at) => model(at).slope, ratio(Math.max(0, best - 1)), best + 1 < gridSteps ? ratio(best + 1) : 1e12);
  const { within } = model(lambda);
  return { between: lambda * within, within };
}

/** −2 × restricted log likelihood but for a constant, its slope in λ, and the variance within at this λ. */
function reml(lambda: number, means: Float64Array, rows: Int32Array, inside: number, n: number) {
  let [weights, weighted, squares, logs] = [0, 0, 0, 0];
  rows.forEach((m, code) => {
    const weight = m / (1 + lambda * m);
    weights += weight;
    weighted += weight * (means[code] as number);
    squares += weight * weight;
    logs += Math.log1p(lambda * m);
  });
  const middle = weighted / weights;
  let [spread, fall] = [inside, 0];
  rows.forEach((m, code) => {
    const weight = m / (1 + lambda * m);
    const from = ((means[code] as number) - middle) ** 2;
    spread += weight * from;
    fall += weight * weight * from;
  });
  const slope = weights - squares / weights - ((n - 1) * fall) / spread;
  return { deviance: (n - 1) * Math.log(spread) + logs + Math.log(weights), slope, within: spread / (n - 1) };
}

/** Where the slope turns from falling to rising; the left end when it rises from there. */
function flatSpot(slope: (lambda: number) => number, left: number, right: number): number {
  let [low, high] = [left, right];
  if (slope(low) >= -1e-12) return low;
  for (let count = 0; count < 200; count++) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (slope(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function sampleVariance(values: Float64Array): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1);
}
