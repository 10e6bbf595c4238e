import type { Note } from "./notes";
import { count, newTally, permutationP, type Tally, takesAll } from "./resample/permutation-p";
import { seededRandom } from "./resample/random";
import { meanWithT } from "./summary/mean-with-t";
import { withinPatientDifferences } from "./summary/patient-pairs";
import { requireTwoGroupRows, type TwoGroupRows } from "./summary/two-group-rows";
import { twoSides } from "./summary/two-sides";
import { thresholds } from "./thresholds";

/**
 * Test of the within-patient difference of two groups by turning its sign, patient by patient.
 * All 2^G sign patterns when at most 20 000, else 9 999 drawn by the seed. Patients in one group only take no part.
 * Fisher RA. The Design of Experiments, 1935, section 21.
 * @throws RangeError when no patient is in both groups, lengths differ or there aren't two groups; TypeError when a value isn't finite
 * @example signFlip({ values: [5, 3, 6, 3, 7, 3], group: [1, 2, 1, 2, 1, 2], patient: [1, 1, 2, 2, 3, 3], seed: 1 }).smallestP // => 0.25
 */
export function signFlip({ seed, ...rows }: TwoGroupRows & { seed: number }) {
  requireTwoGroupRows("signFlip", rows, 0.95);
  const two = twoSides("signFlip", rows);
  const differences = withinPatientDifferences(two);
  if (differences.length === 0) throw new RangeError("signFlip requires patients in both groups, received 0");
  const { estimate, se } = meanWithT(differences, differences.length, 0.95);
  const common = {
    statistic: se ? estimate / se : null,
    df: null,
    n: two.values.length,
    patients: differences.length,
    seed,
    method: "permutation by signs of the within-patient differences",
  };
  if (differences.length < thresholds.patientsForInterval) {
    const notes: Note[] = [{ code: "too-few-for-interval", patients: differences.length, needed: thresholds.patientsForInterval }];
    return { ...common, p: null, smallestP: null, arrangements: 0, exhaustive: false, notes };
  }
  return { ...common, ...testOf(differences, seed) };
}

/** The squares never change, so |Σ ± d| orders the patterns as the studentised mean would. */
function testOf(differences: readonly number[], seed: number) {
  const tally = newTally(Math.abs(differences.reduce((sum, d) => sum + d, 0)));
  const exhaustive = takesAll(2 ** differences.length);
  if (exhaustive) everyPattern(differences, 0, 0, tally);
  const random = seededRandom(seed);
  for (let draw = 0; !exhaustive && draw < thresholds.arrangementsDrawn; draw++) {
    let sum = 0;
    for (const difference of differences) sum += random.bits() & 0x80000000 ? difference : -difference;
    count(tally, Math.abs(sum));
  }
  return permutationP(tally, exhaustive);
}

function everyPattern(differences: readonly number[], from: number, sum: number, tally: Tally): void {
  const difference = differences[from];
  if (difference === undefined) {
    count(tally, Math.abs(sum));
    return;
  }
  everyPattern(differences, from + 1, sum + difference, tally);
  everyPattern(differences, from + 1, sum - difference, tally);
}
