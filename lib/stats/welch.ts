import { countPatients } from "./cluster/patients";
import { tTwoSided } from "./distributions/student-t";
import type { Note } from "./notes";
import { meansByPatient } from "./patient-mean";
import { centred, sumOfSquares } from "./summary/centred";
import { noInterval, tInterval } from "./summary/t-interval";
import { requireTwoGroupRows, type TwoGroupRows } from "./summary/two-group-rows";
import { sideOf, twoSides } from "./summary/two-sides";
import { thresholds } from "./thresholds";

/**
 * Difference of two means of patient means, first minus second, by Welch's t: each patient counts once in a group,
 * the groups may vary differently. A patient in both groups counts in each as if they were two: use pairedT for those.
 * Welch BL. Biometrika 1947;34:28-35.
 * @throws RangeError without values, when lengths differ or there aren't two groups; TypeError when a value isn't finite
 * @example welch({ values: [3, 4, 5, 1, 2, 3], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6] }).estimate // => 2
 */
export function welch({ confidence = 0.95, ...rows }: TwoGroupRows & { confidence?: number }) {
  requireTwoGroupRows("welch", rows, confidence);
  const two = twoSides("welch", rows);
  const sides = ([0, 1] as const).map((side) => {
    const own = sideOf(two, side);
    return { label: two.pair[side], ...momentsOf(meansByPatient(own.values, own.patient)), n: own.values.length };
  }) as [Side, Side];
  const common = {
    estimate: sides[0].mean - sides[1].mean,
    n: two.values.length,
    patients: countPatients(two.patient),
    groups: sides.map(({ label, mean, n, patients }) => ({ label, mean, n, patients })),
    method: "Welch’s t of patient means",
  };
  return { ...common, ...testOf(sides, common.estimate, confidence) };
}

type Side = ReturnType<typeof momentsOf> & { readonly label: string | number; readonly n: number };

/** Mean, and squared error of the mean, of independent values. */
function momentsOf(values: readonly number[]) {
  const { mean, residuals, scale } = centred(values);
  const patients = values.length;
  const error = (Math.sqrt(sumOfSquares(residuals) / (patients - 1)) / Math.sqrt(patients)) * scale;
  return { mean, error, patients };
}

function testOf([first, second]: readonly [Side, Side], estimate: number, confidence: number) {
  const fewest = Math.min(first.patients, second.patients);
  if (fewest < thresholds.patientsForInterval) {
    const notes: Note[] = [{ code: "too-few-for-interval", patients: fewest, needed: thresholds.patientsForInterval }];
    return { ...noInterval, statistic: null, p: null, notes };
  }
  const se = Math.hypot(first.error, second.error);
  if (se === 0) return { ...noInterval, se, statistic: null, p: null, notes: [{ code: "constant-values" }] as Note[] };
  const parts = [(first.error / se) ** 2, (second.error / se) ** 2] as const;
  const df = 1 / (parts[0] ** 2 / (first.patients - 1) + parts[1] ** 2 / (second.patients - 1));
  const statistic = estimate / se;
  return { se, df, ...tInterval(estimate, se, df, confidence), statistic, p: tTwoSided(statistic, df), notes: [] as Note[] };
}
