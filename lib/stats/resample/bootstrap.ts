import { requireCount } from "../require";
import { quantileSorted } from "../summary/order";
import { sampleDeviation } from "../summary/spread";
import { thresholds } from "../thresholds";
import { seededRandom } from "./random";

/** Values of a statistic over resamples, in rising order, and how many resamples had none. */
export interface Replicates {
  readonly values: Float64Array;
  readonly failed: number;
}

/**
 * Draws `patients` patients with replacement, `repeats` times over, and asks for the statistic of each draw.
 * @param statistic gets how often each patient was drawn (the same array each time: read it, don't keep it); null when it has no value
 * @throws RangeError without a patient or a repeat, or when the seed isn't a whole number
 */
export function bootstrapReplicates({
  patients,
  repeats,
  seed,
  statistic,
}: {
  patients: number;
  repeats: number;
  seed: number;
  statistic: (timesDrawn: Int32Array) => number | null;
}): Replicates {
  requireCount("bootstrapReplicates", "patients", patients, 1);
  requireCount("bootstrapReplicates", "repeats", repeats, 1);
  const { uniform } = seededRandom(seed);
  const timesDrawn = new Int32Array(patients);
  const values = new Float64Array(repeats);
  let found = 0;
  for (let repeat = 0; repeat < repeats; repeat++) {
    timesDrawn.fill(0);
    for (let draw = 0; draw < patients; draw++) {
      const drawn = Math.floor(uniform() * patients);
      timesDrawn[drawn] = (timesDrawn[drawn] as number) + 1;
    }
    const value = statistic(timesDrawn);
    if (value !== null && Number.isFinite(value)) values[found++] = value;
  }
  return { values: values.subarray(0, found).sort(), failed: repeats - found };
}

/**
 * Percentile interval: the quantiles of the replicates at (B + 1)p, type 6. Efron B, Tibshirani RJ. An Introduction to the Bootstrap, 1993, ch. 13.
 * Null limits when too many resamples had no value.
 */
export function percentileInterval({ values, failed }: Replicates, confidence: number) {
  if (values.length < 2 || failed > thresholds.failedResamples * (values.length + failed)) return { se: null, lower: null, upper: null };
  const sorted = Array.from(values);
  const tail = (1 - confidence) / 2;
  return { se: sampleDeviation(sorted), lower: quantileSorted(sorted, tail, 6), upper: quantileSorted(sorted, 1 - tail, 6) };
}
