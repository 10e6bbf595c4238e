import { indexPatients, sumByPatient } from "./cluster/patients";
import type { Note } from "./notes";
import { countArrangements, everyArrangement, type Stratum, shuffleWithin } from "./resample/arrangements";
import { count, newTally, permutationP, takesAll } from "./resample/permutation-p";
import { seededRandom } from "./resample/random";
import { centred } from "./summary/centred";
import { requireTwoGroupRows, type TwoGroupRows } from "./summary/two-group-rows";
import { type TwoSides, twoSides } from "./summary/two-sides";
import { thresholds } from "./thresholds";

/** Patients sorted by their number of values; label 0 or 1 is the group, strata are patients with equally many values. */
interface Patients {
  readonly sums: Float64Array;
  readonly rows: Float64Array;
  readonly labels: Int8Array;
  readonly strata: readonly Stratum[];
}

/**
 * Test of the difference of two means by exchanging whole patients between the groups, among patients with equally many values.
 * The statistic is the difference over its CR2 error: without that division unlike numbers and spreads make the test reject too often.
 * All arrangements when at most 20 000, else 9 999 drawn by the seed.
 * Janssen A. Stat Probab Lett 1997;36:9-21 (studentised); Phipson B, Smyth GK. Stat Appl Genet Mol Biol 2010;9:39 (drawn arrangements).
 * @throws RangeError when a patient is in both groups (signFlip is for those), lengths differ or there aren't two groups; TypeError when a value isn't finite
 * @example permutationDifference({ values: [1, 2, 3, 7, 8, 9], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6], seed: 1 }).smallestP // => 0.1
 */
export function permutationDifference({ seed, ...rows }: TwoGroupRows & { seed: number }) {
  requireTwoGroupRows("permutationDifference", rows, 0.95);
  const two = twoSides("permutationDifference", rows);
  const patients = patientsOf(two);
  const sizes = [patients.labels.filter((label) => label === 0).length, patients.labels.filter((label) => label === 1).length] as const;
  const common = {
    df: null,
    n: two.values.length,
    patients: patients.labels.length,
    seed,
    method: "permutation of whole patients, studentised (CR2), within numbers of values a patient",
  };
  const fewest = Math.min(...sizes);
  if (fewest < thresholds.patientsForInterval) {
    const notes: Note[] = [{ code: "too-few-for-interval", patients: fewest, needed: thresholds.patientsForInterval }];
    return { ...common, statistic: null, p: null, smallestP: null, arrangements: 0, exhaustive: false, notes };
  }
  return { ...common, statistic: finiteOrNull(studentised(patients, patients.labels)), ...testOf(patients, seed) };
}

function testOf(patients: Patients, seed: number) {
  const { strata } = patients;
  const labels = patients.labels.slice();
  const tally = newTally(Math.abs(studentised(patients, labels)));
  const exhaustive = takesAll(countArrangements(labels, strata, thresholds.arrangementsTaken));
  if (exhaustive) everyArrangement(labels, strata, (arranged) => count(tally, Math.abs(studentised(patients, arranged))));
  const random = seededRandom(seed);
  for (let draw = 0; !exhaustive && draw < thresholds.arrangementsDrawn; draw++) {
    shuffleWithin(labels, strata, random);
    count(tally, Math.abs(studentised(patients, labels)));
  }
  return permutationP(tally, exhaustive);
}

/** Difference of the means over its CR2 error; without spread 0 when the means are equal, else infinite. */
function studentised({ sums, rows }: Patients, labels: Int8Array): number {
  const total = [0, 0];
  const n = [0, 0];
  for (let c = 0; c < labels.length; c++) {
    const side = labels[c] as 0 | 1;
    total[side] = (total[side] as number) + (sums[c] as number);
    n[side] = (n[side] as number) + (rows[c] as number);
  }
  const means = [(total[0] as number) / (n[0] as number), (total[1] as number) / (n[1] as number)];
  let variance = 0;
  for (let c = 0; c < labels.length; c++) {
    const side = labels[c] as 0 | 1;
    const all = n[side] as number;
    const own = rows[c] as number;
    variance += ((sums[c] as number) - own * (means[side] as number)) ** 2 / (all * all * (1 - own / all));
  }
  const difference = (means[0] as number) - (means[1] as number);
  if (variance > 1e-24 * difference * difference) return difference / Math.sqrt(variance);
  return difference === 0 ? 0 : difference > 0 ? Infinity : -Infinity;
}

function patientsOf({ values, patient, sides }: TwoSides): Patients {
  const index = indexPatients(patient);
  const sums = sumByPatient(index, centred(values).residuals);
  const seconds = sumByPatient(index, sides);
  const both = seconds.filter((own, c) => own > 0 && own < (index.rows[c] as number)).length;
  if (both > 0) throw new RangeError(`permutationDifference requires each patient in one group, received ${both} in both`);
  const order = Array.from(sums.keys()).sort((a, b) => (index.rows[a] as number) - (index.rows[b] as number) || a - b);
  const rows = Float64Array.from(order, (c) => index.rows[c] as number);
  return {
    rows,
    sums: Float64Array.from(order, (c) => sums[c] as number),
    labels: Int8Array.from(order, (c) => ((seconds[c] as number) > 0 ? 1 : 0)),
    strata: strataOf(rows),
  };
}

function strataOf(rows: Float64Array): Stratum[] {
  const strata: Stratum[] = [];
  for (let start = 0; start < rows.length; ) {
    let end = start;
    while (end < rows.length && rows[end] === rows[start]) end++;
    strata.push({ start, end });
    start = end;
  }
  return strata;
}

function finiteOrNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
