import { countPatients } from "./cluster/patients";
import { tTwoSided } from "./distributions/student-t";
import { meanWithT } from "./summary/mean-with-t";
import { withinPatientDifferences } from "./summary/patient-pairs";
import { requireTwoGroupRows, type TwoGroupRows } from "./summary/two-group-rows";
import { twoSides } from "./summary/two-sides";

/**
 * Difference within patients: of each patient with values in both groups, mean of the first minus mean of the second;
 * Student's t over those patients. Patients in one group only take no part and are counted.
 * Student. Biometrika 1908;6:1-25.
 * @throws RangeError without values, when lengths differ, there aren't two groups or no patient is in both; TypeError when a value isn't finite
 * @example pairedT({ values: [5, 3, 6, 3, 7, 3], group: [1, 2, 1, 2, 1, 2], patient: [1, 1, 2, 2, 3, 3] }).estimate // => 3
 */
export function pairedT({ confidence = 0.95, ...rows }: TwoGroupRows & { confidence?: number }) {
  requireTwoGroupRows("pairedT", rows, confidence);
  const two = twoSides("pairedT", rows);
  const differences = withinPatientDifferences(two);
  if (differences.length === 0) throw new RangeError("pairedT requires patients in both groups, received 0");
  const mean = meanWithT(differences, differences.length, confidence);
  const statistic = mean.se ? mean.estimate / mean.se : null;
  const patients = countPatients(two.patient);
  return {
    ...mean,
    statistic,
    p: statistic === null || mean.df === null ? null : tTwoSided(statistic, mean.df),
    n: two.values.length,
    patients: differences.length,
    patientsInOneGroupOnly: patients - differences.length,
    method: "within-patient difference, paired t",
  };
}
