import { chiSquareUpper } from "./distributions";
import type { Note } from "./notes";
import type { TestResult } from "./record";
import { type GroupLabels, groupsOf } from "./survival/groups";
import { atRiskByGroup, logRankRobustVariance, logRankSums } from "./survival/log-rank-sums";
import { patientsOf } from "./survival/patients-of";
import { quadraticForm } from "./survival/quadratic-form";
import { requireTimeRows, type TimeRows } from "./survival/require-rows";
import { riskSteps } from "./survival/risk-steps";
import { thresholds } from "./thresholds";

/** With patients `statistic` and `p` are those of the robust score; `plain` takes every row as another patient. */
export interface LogRank extends TestResult {
  readonly groups: readonly (string | number)[];
  readonly observed: readonly number[];
  readonly expected: readonly number[];
  readonly plain: { readonly statistic: number | null; readonly p: number | null };
}

/**
 * Log-rank test of two or more groups; with `patient` its score has the variance of the patients' sums (the robust score test of a Cox
 * model at no effect, Breslow's ties), otherwise the hypergeometric one. Rows may enter late.
 * Mantel 1966, Cancer Chemother Rep 50:163-170; Lin, Wei 1989, J Am Stat Assoc 84:1074-1078.
 * @throws RangeError, TypeError when the rows are not as `TimeRows` says or there is one group only
 * @example logRank({ times: [1, 2, 3, 4], event: [1, 1, 1, 1], group: ["a", "a", "b", "b"] }).observed // => [2, 2]
 */
export function logRank({ group, ...rows }: TimeRows & { readonly group: GroupLabels }): LogRank {
  requireTimeRows("logRank", rows);
  const groups = groupsOf("logRank", group, rows.times.length);
  const steps = riskSteps(rows);
  const byGroup = atRiskByGroup(steps, groups);
  const { observed, expected, variance } = logRankSums(steps, groups, rows.event, byGroup);
  const score = observed.map((count, i) => count - (expected[i] as number));
  const df = groups.labels.length - 1;
  const plain = tested(quadraticForm(score, variance), df);
  const patients = patientsOf(rows.patient, rows.times.length);
  const enough = patients.count >= thresholds.patientsForInterval;
  const robustVariance = () => logRankRobustVariance(steps, groups, rows.event, byGroup, patients);
  const robust = rows.patient ? tested(enough ? quadraticForm(score, robustVariance()) : null, df) : plain;
  return {
    ...robust,
    df,
    groups: groups.labels,
    observed: Array.from(observed),
    expected: Array.from(expected),
    plain,
    n: rows.times.length,
    patients: rows.patient ? patients.count : null,
    method: rows.patient ? "log-rank test, robust score by patient" : "log-rank test",
    convention: rows.patient ? "variance of the patients’ score sums, ties as Breslow" : "hypergeometric variance",
    notes: notesOf(robust.statistic, enough, patients.count),
  };
}

function tested(statistic: number | null, df: number): { statistic: number | null; p: number | null } {
  return { statistic, p: statistic === null ? null : chiSquareUpper(statistic, df) };
}

function notesOf(statistic: number | null, enough: boolean, patients: number): readonly Note[] {
  if (!enough) return [{ code: "too-few-for-interval", patients, needed: thresholds.patientsForInterval }];
  return statistic === null ? [{ code: "not-estimable", because: "a group has no variance of its own" }] : [];
}
