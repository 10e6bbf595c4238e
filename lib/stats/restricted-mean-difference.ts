import { normalQuantile, normalTwoSided } from "./distributions";
import type { Note } from "./notes";
import type { Estimate } from "./record";
import { requireConfidence, requirePositive } from "./require";
import { sumOfSquares } from "./summary/centred";
import { type GroupLabels, groupsOf } from "./survival/groups";
import { patientsOf } from "./survival/patients-of";
import { requireTimeRows, type TimeRows } from "./survival/require-rows";
import { restrictedMean } from "./survival/restricted-mean";
import { riskSteps } from "./survival/risk-steps";
import { survivalAtSteps } from "./survival/survival-curve";
import { thresholds } from "./thresholds";

/** Second group less first, groups in the order of their labels. */
export interface RestrictedMeanDifference extends Estimate {
  readonly tau: number;
  readonly groups: readonly (string | number)[];
  readonly means: readonly (number | null)[];
  readonly statistic: number | null;
  readonly p: number | null;
}

export interface RestrictedMeanDifferenceInput extends TimeRows {
  readonly group: GroupLabels;
  readonly tau: number;
  readonly confidence?: number;
}

/**
 * Difference of the mean times up to `tau` between two groups. A patient with rows in both groups bears on both means, and the error
 * takes the difference of both influences, so pairs gain what they share.
 * Royston, Parmar 2013, BMC Med Res Methodol 13:152; errors by patient: infinitesimal jackknife.
 * @throws RangeError, TypeError when the rows are not as `TimeRows` says, there are not two groups, or tau is not above zero
 * @example restrictedMeanDifference({ times: [2, 4, 6, 8], event: [1, 1, 1, 1], group: [0, 0, 1, 1], tau: 8 }).estimate // => 4
 */
export function restrictedMeanDifference({
  group,
  tau,
  confidence = 0.95,
  ...rows
}: RestrictedMeanDifferenceInput): RestrictedMeanDifference {
  requireTimeRows("restrictedMeanDifference", rows);
  requirePositive("restrictedMeanDifference", "tau", tau);
  requireConfidence("restrictedMeanDifference", confidence);
  const groups = groupsOf("restrictedMeanDifference", group, rows.times.length);
  if (groups.labels.length > 2) throw new RangeError(`restrictedMeanDifference requires two groups, received ${groups.labels.length}`);
  const patients = patientsOf(rows.patient, rows.times.length);
  const [first, second] = [0, 1].map((code) => meanOfGroup(rows, groups.code, code, patients.codes, patients.count, tau));
  const known = first != null && second != null;
  const estimate = known ? second.estimate - first.estimate : null;
  const enough = patients.count >= thresholds.patientsForInterval;
  const se = known && enough ? Math.sqrt(sumOfSquares(second.influence.map((value, i) => value - (first.influence[i] as number)))) : null;
  return {
    estimate,
    se,
    df: null,
    ...intervalAndTest(estimate, se, confidence),
    tau,
    groups: groups.labels,
    means: [first?.estimate ?? null, second?.estimate ?? null],
    n: rows.times.length,
    patients: rows.patient ? patients.count : null,
    method: `difference in restricted mean time, infinitesimal jackknife ${rows.patient ? "by patient" : "by row"}`,
    convention: "second group less first, normal quantiles",
    notes: notesOf(known, enough, patients.count),
  };
}

function meanOfGroup(rows: TimeRows, code: Int32Array, wanted: number, codes: Int32Array, count: number, tau: number) {
  const own = Array.from(code.keys()).filter((row) => code[row] === wanted);
  const pick = (values: ArrayLike<number>) => own.map((row) => values[row] as number);
  const part = { times: pick(rows.times), event: pick(rows.event), entry: rows.entry && pick(rows.entry) };
  const steps = riskSteps(part);
  const patients = { codes: Int32Array.from(pick(codes)), count, rows: new Int32Array(count) };
  return restrictedMean(steps, survivalAtSteps(steps), part.event, patients, tau);
}

function intervalAndTest(estimate: number | null, se: number | null, confidence: number) {
  if (estimate === null || se === null || se === 0) return { lower: null, upper: null, statistic: null, p: null };
  const z = normalQuantile(0.5 + confidence / 2);
  return { lower: estimate - z * se, upper: estimate + z * se, statistic: estimate / se, p: normalTwoSided(estimate / se) };
}

function notesOf(known: boolean, enough: boolean, patients: number): readonly Note[] {
  const notes: Note[] = [];
  if (!enough) notes.push({ code: "too-few-for-interval", patients, needed: thresholds.patientsForInterval });
  if (!known) notes.push({ code: "not-estimable", because: "the restricted mean reaches beyond the last time of a group" });
  return notes;
}
