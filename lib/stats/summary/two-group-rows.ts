import { requireRows } from "../cluster/check-rows";
import type { GroupLabels } from "../cluster/groups";
import type { PatientLabels } from "../record";
import { requireConfidence, requireSameLength } from "../require";

/** What the methods of two groups of patients' values take. */
export interface TwoGroupRows {
  readonly values: readonly number[];
  readonly group: GroupLabels;
  readonly patient: PatientLabels;
  /** The two groups, first minus second; left out, the order in which two groups occur. Rows of other groups take no part. */
  readonly between?: readonly [string | number, string | number];
}

export function requireTwoGroupRows(caller: string, { values, group, patient }: TwoGroupRows, confidence: number): void {
  requireRows(caller, values, patient);
  requireSameLength(caller, "values", values.length, "group", group.length);
  requireConfidence(caller, confidence);
}
