import { seededRandom } from "../resample/random";
import { quantileSorted } from "../summary/order";
import { sampleDeviation } from "../summary/spread";
import { addAt } from "./add-at";
import type { IncidenceInput } from "./incidence-curve";

export interface BootstrapLimits {
  readonly se: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

/**
 * Percentile limits of the incidence of `cause` at each step: patients drawn with replacement, all rows of each going together;
 * quantiles of the replicates at (B + 1)p.
 * A draw only reweights the rows, so the steps are found once and each replicate costs one pass.
 */
export function incidenceBootstrap(
  input: IncidenceInput,
  cause: number,
  { confidence, replicates, seed }: { confidence: number; replicates: number; seed: number },
): BootstrapLimits {
  const random = seededRandom(seed);
  const { patients, steps } = input;
  const drawn = Array.from({ length: replicates }, () => {
    const weight = new Float64Array(patients.count);
    for (let i = 0; i < patients.count; i++) addAt(weight, random.below(patients.count), 1);
    return weightedIncidence(input, cause, weight);
  });
  const se = new Float64Array(steps.time.length);
  const lower = new Float64Array(steps.time.length);
  const upper = new Float64Array(steps.time.length);
  for (let step = 0; step < steps.time.length; step++) {
    const values = Array.from(Float64Array.from(drawn, (curve) => curve[step] as number).sort());
    se[step] = sampleDeviation(values) as number;
    lower[step] = quantileSorted(values, (1 - confidence) / 2, 6);
    upper[step] = quantileSorted(values, (1 + confidence) / 2, 6);
  }
  return { se, lower, upper };
}

/** The incidence with each patient counted `weight` times. */
export function weightedIncidence({ steps, event, patients }: IncidenceInput, cause: number, weight: Float64Array): Float64Array {
  const change = new Float64Array(steps.time.length + 1);
  const all = new Float64Array(steps.time.length);
  const own = new Float64Array(steps.time.length);
  for (let row = 0; row < steps.exit.length; row++) {
    const times = weight[patients.codes[row] as number] as number;
    const exit = steps.exit[row] as number;
    addAt(change, steps.start[row] as number, times);
    addAt(change, exit + 1, -times);
    if (event[row]) addAt(all, exit, times);
    if (event[row] === cause) addAt(own, exit, times);
  }
  let [n, survival, incidence] = [0, 1, 0];
  return all.map((d, step) => {
    n += change[step] as number;
    if (n > 0) {
      incidence += (survival * (own[step] as number)) / n;
      survival *= (n - d) / n;
    }
    return incidence;
  });
}
