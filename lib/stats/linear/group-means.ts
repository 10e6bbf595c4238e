import type { PatientIndex } from "../cluster/patients";
import { centred } from "../summary/centred";
import { type ClusteredFit, fitOf } from "./clustered-fit";

/** Means of k groups as a fit whose orthonormal columns are the groups' indicators over √n: built directly, without factoring. */
export interface GroupMeans {
  readonly fit: ClusteredFit;
  readonly means: readonly number[];
  readonly counts: readonly number[];
  /** Patients with a row in each group. */
  readonly patients: readonly number[];
  readonly scale: number;
  readonly constant: boolean;
}

/** @param group number of the group of each row, from 0 to k − 1, each with a row */
export function groupMeans(values: readonly number[], group: Int32Array, k: number, index: PatientIndex): GroupMeans {
  const whole = centred(values);
  const counts = new Array<number>(k).fill(0);
  const sums = new Array<number>(k).fill(0);
  group.forEach((g, i) => {
    counts[g] = (counts[g] as number) + 1;
    sums[g] = (sums[g] as number) + (whole.residuals[i] as number);
  });
  const means = sums.map((sum, g) => sum / (counts[g] as number));
  const grams = new Float64Array(index.count * k * k);
  const scores = new Float64Array(index.count * k);
  group.forEach((g, i) => {
    const score = (index.codes[i] as number) * k + g;
    const gram = score * k + g;
    grams[gram] = (grams[gram] as number) + 1 / (counts[g] as number);
    scores[score] = (scores[score] as number) + ((whole.residuals[i] as number) - (means[g] as number)) / Math.sqrt(counts[g] as number);
  });
  return {
    fit: fitOf(k, index.count, { grams, scores }),
    means: means.map((mean) => whole.mean + mean * whole.scale),
    counts,
    patients: patientsIn(grams, k),
    scale: whole.scale,
    constant: whole.constant,
  };
}

/** Patients with a row in each group: their Gram matrix has something there. */
function patientsIn(grams: Float64Array, k: number): number[] {
  const patients = new Array<number>(k).fill(0);
  for (let at = 0; at < grams.length; at += k * k)
    for (let g = 0; g < k; g++) if ((grams[at + g * (k + 1)] as number) > 0) patients[g] = (patients[g] as number) + 1;
  return patients;
}

/** A contrast of group means in the coordinates of the fit. */
export function groupContrast({ counts }: GroupMeans, weights: readonly number[]): Float64Array {
  return Float64Array.from(weights, (weight, g) => weight / Math.sqrt(counts[g] as number));
}
