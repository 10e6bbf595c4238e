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
  const sizes = sizesOf(means, index.rows);
  const model = (lambda: number) => reml(lambda, sizes, inside, n);
  const ratio = (place: number) => place / (gridSteps - place);
  let best = 0;
  for (let place = 1; place < gridSteps; place++) if (model(ratio(place)).deviance < model(ratio(best)).deviance - 1e-12) best = place;
  const lambda = flatSpot((at) => model(at).slope, ratio(Math.max(0, best - 1)), best + 1 < gridSteps ? ratio(best + 1) : 1e12);
  const { within } = model(lambda);
  return { between: lambda * within, within };
}

/** The patients with `m` values each, together: how many, and the mean and centred sum of squares of their means. */
interface Size {
  readonly m: number;
  patients: number;
  mean: number;
  squares: number;
}

/** The likelihood knows a patient by number of values and mean, so that patients with equal numbers stand in it as one; Welford's running mean and squares. */
function sizesOf(means: Float64Array, rows: Int32Array): readonly Size[] {
  const sizes = new Map<number, Size>();
  rows.forEach((m, code) => {
    const size = sizes.get(m) ?? { m, patients: 0, mean: 0, squares: 0 };
    if (size.patients === 0) sizes.set(m, size);
    const from = (means[code] as number) - size.mean;
    size.patients += 1;
    size.mean += from / size.patients;
    size.squares += from * ((means[code] as number) - size.mean);
  });
  return [...sizes.values()];
}

/** −2 × restricted log likelihood but for a constant, its slope in λ, and the variance within at this λ. */
function reml(lambda: number, sizes: readonly Size[], inside: number, n: number) {
  let [weights, weighted, squares, logs] = [0, 0, 0, 0];
  for (const { m, patients, mean } of sizes) {
    const weight = m / (1 + lambda * m);
    weights += patients * weight;
    weighted += patients * weight * mean;
    squares += patients * weight * weight;
    logs += patients * Math.log1p(lambda * m);
  }
  const middle = weighted / weights;
  let [spread, fall] = [inside, 0];
  for (const { m, patients, mean, squares: own } of sizes) {
    const weight = m / (1 + lambda * m);
    const from = own + patients * (mean - middle) ** 2;
    spread += weight * from;
    fall += weight * weight * from;
  }
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
