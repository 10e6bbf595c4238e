import { cr2Regression, thresholds } from "@/lib/stats";
import { type Difference, names } from "./differences";
import type { Side } from "./sides";

type Row = {
  readonly days: number;
  readonly gainMm: number | null;
  readonly healed: boolean;
  readonly person: number;
  readonly group: "a" | "b";
};

export const onStraightLines = "days at equal gain, on straight lines";

/**
 * Days by which the first group differs from the second at equal gain when both lie on lines of one slope: days = a + b·cm + group, over the
 * healed. A ratio on the scale of logarithms can't hold a line that doesn't pass through nothing; where gains of the groups hardly overlap the
 * two can disagree, and then neither shows a difference by itself.
 */
export function straightLinesDifference(rows: readonly Row[], sides: readonly [Side, Side]): Difference | null {
  const healed = rows.filter(({ healed: own, gainMm }) => own && (gainMm ?? 0) > 0);
  const gains = healed.map(({ gainMm }) => (gainMm ?? 0) / 10);
  const inFirst = healed.map(({ group }) => Number(group === "a"));
  if (
    !inFirst.includes(1) ||
    !inFirst.includes(0) ||
    !bothVary(gains, inFirst) ||
    new Set(healed.map(({ person }) => person)).size < thresholds.patientsForInterval
  )
    return null;
  const { coefficients, method } = cr2Regression({
    values: healed.map(({ days }) => days),
    design: gains.map((cm, i) => [cm, inFirst[i] ?? 0]),
    patient: healed.map(({ person }) => person),
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
function bothVary(gains: readonly number[], inFirst: readonly number[]): boolean {
  return [0, 1].some((side) => new Set(gains.filter((_, i) => inFirst[i] === side)).size > 1);
}
