import { countPatients, cr2Regression, thresholds } from "@/lib/stats";
import type { WithGain } from "../healing/columns";
import { type Difference, names } from "./differences";
import type { Side } from "./sides";

export const onStraightLines = "days at equal gain, on straight lines";

/**
 * Days by which the first group differs from the second at equal gain when both lie on lines of one slope: days = a + b·cm + group, over the
 * healed. A ratio on the scale of logarithms can't hold a line that doesn't pass through nothing; where gains of the groups hardly overlap the
 * two can disagree, and then neither shows a difference by itself.
 */
export function straightLinesDifference([a, b]: readonly [WithGain, WithGain], sides: readonly [Side, Side]): Difference | null {
  const patient = [...a.patient, ...b.patient];
  if (!canBeParted(a.gainCm, b.gainCm) || countPatients(patient) < thresholds.patientsForInterval) return null;
  const { coefficients, method } = cr2Regression({
    values: [...a.days, ...b.days],
    design: [...a.gainCm.map((cm) => [cm, 1]), ...b.gainCm.map((cm) => [cm, 0])],
    patient,
    names: ["cm", "group"],
  });
  const coefficient = coefficients[2];
  if (!coefficient) return null;
  const { estimate, se, df, lower, upper } = coefficient;
  return {
    ...names(sides),
    kind: "difference",
    what: onStraightLines,
    estimate,
    se,
    df,
    lower,
    upper,
    p: null,
    method: `days = a + b·cm + group over the healed, ${method}`,
    adjustedFor: [],
    detectable: null,
  };
}

/** Whether an interval leaves *no difference* out. */
export function isShown({ kind, lower, upper }: Difference): boolean {
  const none = kind === "ratio" ? 1 : 0;
  return lower !== null && upper !== null && (lower > none || upper < none);
}

/** Gain must vary within a group, or it can't be told from the group. */
function canBeParted(a: readonly number[], b: readonly number[]): boolean {
  const varies = (gains: readonly number[]) => gains.some((cm) => cm !== gains[0]);
  return a.length > 0 && b.length > 0 && (varies(a) || varies(b));
}
