import { chiSquareUpper } from "./distributions";
import type { TestResult } from "./record";
import { requireCount } from "./require";
import { graySums } from "./survival/gray-sums";
import { type GroupLabels, groupsOf } from "./survival/groups";
import { patientsOf } from "./survival/patients-of";
import { quadraticForm } from "./survival/quadratic-form";
import { requireTimeRows, type TimeRows } from "./survival/require-rows";
import { riskSteps } from "./survival/risk-steps";

export interface GrayTest extends TestResult {
  readonly cause: number;
  readonly groups: readonly (string | number)[];
}

export interface GrayTestInput extends Omit<TimeRows, "entry"> {
  readonly group: GroupLabels;
  readonly cause?: number;
}

/**
 * Gray's test that the cumulative incidence of `cause` is the same in all groups, other events competing (`event` 1, 2, …; 0 censored).
 * It takes rows as unrelated, so it refuses several rows of one patient: compare those by permuting patients.
 * Gray 1988, Ann Stat 16:1141-1154.
 * @throws RangeError, TypeError when the rows are not as `TimeRows` says, a patient has several, or there is one group only
 * @example grayTest({ times: [1, 2, 3, 4], event: [1, 2, 2, 1], group: ["a", "a", "b", "b"] }).df // => 1
 */
export function grayTest({ group, cause = 1, ...rows }: GrayTestInput): GrayTest {
  if ("entry" in rows) throw new RangeError("grayTest requires rows under observation from the start, received entry");
  requireCount("grayTest", "cause", cause, 1);
  requireTimeRows("grayTest", rows, 100);
  const n = rows.times.length;
  const { count } = patientsOf(rows.patient, n);
  if (count < n) throw new RangeError(`grayTest requires one row a patient, received ${n} rows of ${count}`);
  const groups = groupsOf("grayTest", group, n);
  const { score, variance } = graySums(riskSteps(rows), groups, rows.event, cause);
  const statistic = quadraticForm(score, variance);
  const df = groups.labels.length - 1;
  return {
    statistic,
    df,
    p: statistic === null ? null : chiSquareUpper(statistic, df),
    cause,
    groups: groups.labels,
    n,
    patients: rows.patient ? count : null,
    method: "Gray’s test of equal cumulative incidence",
    convention: "weight 1 (rho = 0)",
    notes: statistic === null ? [{ code: "not-estimable", because: "a group has no variance of its own" }] : [],
  };
}
