import { type GroupLabels, pairOf, rowsOfPair } from "./cluster/groups";
import type { PatientIndex } from "./cluster/patients";
import { normalQuantile, normalTwoSided } from "./distributions";
import type { Note } from "./notes";
import type { Estimate } from "./record";
import { requireConfidence, requirePositive, requireSameLength } from "./require";
import { sumOfSquares } from "./summary/centred";
import { patientsOf } from "./survival/patients-of";
import { requireTimeRows, type TimeRows } from "./survival/require-rows";
import { restrictedMean } from "./survival/restricted-mean";
import { riskSteps } from "./survival/risk-steps";
import { survivalAtSteps } from "./survival/survival-curve";
import { thresholds } from "./thresholds";

export interface RestrictedMeanDifference extends Estimate {
  readonly tau: number;
  readonly groups: readonly { readonly label: string | number; readonly mean: number | null; readonly n: number }[];
  readonly statistic: number | null;
  readonly p: number | null;
}

export interface RestrictedMeanDifferenceInput extends TimeRows {
  readonly group: GroupLabels;
  /** The two groups, first minus second; left out, the order in which two groups occur. Rows of other groups take no part. */
  readonly between?: readonly [string | number, string | number];
  readonly tau: number;
  readonly confidence?: number;
}

/**
 * Difference of the mean times up to `tau` between two groups, first minus second. A patient with rows in both groups bears on both means, and the error
 * takes the difference of both influences, so pairs gain what they share.
 * Royston, Parmar 2013, BMC Med Res Methodol 13:152; errors by patient: infinitesimal jackknife.
 * @throws RangeError, TypeError when the rows are not as `TimeRows` says, there are not two groups, or tau is not above zero
 * @example restrictedMeanDifference({ times: [2, 4, 6, 8], event: [1, 1, 1, 1], group: [0, 0, 1, 1], tau: 8 }).estimate // => -4
 */
export function restrictedMeanDifference({
  group,
  between,
  tau,
  confidence = 0.95,
  ...rows
}: RestrictedMeanDifferenceInput): RestrictedMeanDifference {
  requireTimeRows("restrictedMeanDifference", rows);
  requirePositive("restrictedMeanDifference", "tau", tau);
  requireConfidence("restrictedMeanDifference", confidence);
  requireSameLength("restrictedMeanDifference", "times", rows.times.length, "group", group.length);
  const pair = pairOf("restrictedMeanDifference", group, between);
  const { rows: taken, sides } = rowsOfPair(group, pair);
  const patients = patientsOf(rows.patient && taken.map((row) => rows.patient?.[row] as string | number), taken.length);
  const [first, second] = [0, 1].map((side) => meanOfSide(rows, taken, sides, side, patients, tau));
  const known = first != null && second != null;
  const estimate = known ? first.estimate - second.estimate : null;
  const enough = patients.count >= thresholds.patientsForInterval;
  const se = known && enough ? Math.sqrt(sumOfSquares(first.influence.map((value, i) => value - (second.influence[i] as number)))) : null;
  return {
    estimate,
    se,
    df: null,
    ...intervalAndTest(estimate, se, confidence),
    tau,
    groups: pair.map((label, side) => ({
      label,
      mean: [first, second][side]?.estimate ?? null,
      n: sides.filter((one) => one === side).length,
    })),
    n: taken.length,
    patients: rows.patient ? patients.count : null,
    method: `difference in restricted mean time, infinitesimal jackknife ${rows.patient ? "by patient" : "by row"}`,
    convention: "first group minus second, normal quantiles",
    notes: notesOf(known, enough, patients.count),
  };
}

/** The mean of one group, its influence a number for each patient of both groups. */
function meanOfSide(rows: TimeRows, taken: readonly number[], sides: Int32Array, side: number, patients: PatientIndex, tau: number) {
  const own = taken.flatMap((row, i) => (sides[i] === side ? [{ row, code: patients.codes[i] as number }] : []));
  const pick = (values: ArrayLike<number>) => own.map(({ row }) => values[row] as number);
  const part = { times: pick(rows.times), event: pick(rows.event), entry: rows.entry && pick(rows.entry) };
  const steps = riskSteps(part);
  const codes = Int32Array.from(own, ({ code }) => code);
  return restrictedMean(steps, survivalAtSteps(steps), part.event, { ...patients, codes }, tau);
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
