import { requireRows } from "./cluster/check-rows";
import { type GroupLabels, pairOf, rowsOfPair } from "./cluster/groups";
import { indexPatients } from "./cluster/patients";
import { contrastEstimate, withheld } from "./linear/contrast-estimate";
import { type GroupMeans, groupContrast, groupMeans } from "./linear/group-means";
import type { Note } from "./notes";
import type { PatientLabels } from "./record";
import { requireConfidence, requireSameLength } from "./require";
import { thresholds } from "./thresholds";

/**
 * Difference of two means, first minus second, whichever patients have values in one group or in both.
 * CR2 of Bell and McCaffrey on the two group means, Satterthwaite df. With one value a patient the error is Welch's.
 * Pustejovsky JE, Tipton E. J Bus Econ Stat 2018;36:672-683.
 * @param between the two groups, first minus second; left out, the order in which two groups occur. Rows of other groups take no part
 * @throws RangeError without values, when lengths differ or there aren't two groups; TypeError when a value is not finite
 * @example cr2Difference({ values: [3, 4, 5, 1, 2, 3], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6] }).estimate // => 2
 */
export function cr2Difference({
  values,
  group,
  patient,
  between,
  confidence = 0.95,
}: {
  values: readonly number[];
  group: GroupLabels;
  patient: PatientLabels;
  between?: readonly [string | number, string | number];
  confidence?: number;
}) {
  requireRows("cr2Difference", values, patient);
  requireSameLength("cr2Difference", "values", values.length, "group", group.length);
  requireConfidence("cr2Difference", confidence);
  const pair = pairOf("cr2Difference", group, between);
  const { rows, sides } = rowsOfPair(group, pair);
  const index = indexPatients(rows.map((row) => patient[row] as string | number));
  const means = groupMeans(
    rows.map((row) => values[row] as number),
    sides,
    2,
    index,
  );
  const result = differenceOf(means, confidence);
  return {
    ...result,
    notes: means.constant ? [...result.notes, { code: "constant-values" } as const] : result.notes,
    n: rows.length,
    patients: index.count,
    groups: pair.map((label, g) => ({ label, mean: means.means[g], n: means.counts[g], patients: means.patients[g] })),
    patientsInBoth: (means.patients[0] as number) + (means.patients[1] as number) - index.count,
    method: "difference of means with CR2 cluster-robust variance, Satterthwaite df",
  };
}

function differenceOf(means: GroupMeans, confidence: number) {
  const estimate = (means.means[0] as number) - (means.means[1] as number);
  const fewest = Math.min(...means.patients);
  if (fewest < thresholds.patientsForInterval) return withheld(estimate, tooFew(fewest));
  return contrastEstimate(means.fit, groupContrast(means, [1, -1]), estimate, means.scale, confidence);
}

function tooFew(patients: number): Note {
  return { code: "too-few-for-interval", patients, needed: thresholds.patientsForInterval };
}
