import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { type GroupLabels, pairOf, rowsOfPair } from "./cluster/groups";
import type { Note } from "./notes";
import { requireFinite, requireSameLength, requireSome } from "./require";
import { meanOf, sampleDeviation } from "./summary/spread";

/** `levels` are codes without order; `binary` is 0 or 1. */
export type StandardisedInput = {
  readonly group: GroupLabels;
  readonly between?: readonly [string | number, string | number];
} & (
  | { readonly kind: "continuous" | "binary"; readonly values: readonly number[] }
  | { readonly kind: "levels"; readonly values: readonly (string | number)[] }
);

/**
 * How far two groups differ in a characteristic, in its own spread, first minus second: independent of the number of cases, so fit for case mix.
 * continuous: (m₁ − m₂)/√((s₁² + s₂²)/2); binary: the same with p(1 − p); levels: √(d′S⁻¹d) of the shares of all levels but one, without a sign.
 * Austin PC. Stat Med 2009;28:3083-3107; Yang D, Dalton JE. SAS Global Forum 2012, paper 335 (levels).
 * @returns estimate null with a note when neither group varies but they differ, a group has one value, or the groups have no level in common
 * @throws RangeError without rows, when lengths differ, there aren't two groups, or a binary value is neither 0 nor 1; TypeError when a number isn't finite
 * @example standardisedDifference({ kind: "binary", values: [1, 0, 1, 1, 0, 0], group: [1, 1, 1, 2, 2, 2] }).estimate.toFixed(4) // => "0.7071"
 */
export function standardisedDifference(input: StandardisedInput) {
  const { group, kind, between } = input;
  requireSome("standardisedDifference", "row", input.values.length);
  requireSameLength("standardisedDifference", "values", input.values.length, "group", group.length);
  const pair = pairOf("standardisedDifference", group, between);
  const { rows, sides } = rowsOfPair(group, pair);
  const side = <T>(values: readonly T[], which: number) => rows.flatMap((row, i) => (sides[i] === which ? [values[row] as T] : []));
  const estimate =
    input.kind === "levels"
      ? ofLevels(side(input.values, 0), side(input.values, 1))
      : ofNumbers(input.kind, side(input.values, 0), side(input.values, 1));
  const notes: readonly Note[] = estimate === null ? [{ code: "not-estimable", because: "no spread to measure the difference in" }] : [];
  return {
    estimate,
    n: rows.length,
    kind,
    method: "standardised difference",
    convention: "spread of both groups averaged, unweighted",
    notes,
  };
}

function ofNumbers(kind: "continuous" | "binary", first: readonly number[], second: readonly number[]): number | null {
  for (const values of [first, second]) {
    requireFinite("standardisedDifference", "values", values);
    if (kind === "binary" && values.some((value) => value !== 0 && value !== 1)) {
      throw new RangeError("standardisedDifference requires binary values of 0 or 1, received another value");
    }
  }
  const means = [meanOf(first) as number, meanOf(second) as number] as const;
  const spreadOf = (values: readonly number[], mean: number) =>
    // equal values have no spread, whatever their mean rounds to
    kind === "binary" ? Math.sqrt(mean * (1 - mean)) : values.length > 1 && new Set(values).size === 1 ? 0 : sampleDeviation(values);
  const spreads = [spreadOf(first, means[0]), spreadOf(second, means[1])] as const;
  if (spreads[0] === null || spreads[1] === null) return null;
  const spread = Math.hypot(spreads[0], spreads[1]) * Math.SQRT1_2;
  if (spread === 0) return means[0] === means[1] ? 0 : null;
  return (means[0] - means[1]) / spread;
}

function ofLevels(first: readonly (string | number)[], second: readonly (string | number)[]): number | null {
  const levels = [...new Set([...first, ...second])].slice(1);
  if (levels.length === 0) return 0;
  // groups without a level in common lie infinitely far apart: in that direction neither of them varies
  const seen = new Set(first);
  if (!second.some((level) => seen.has(level))) return null;
  const shares = [first, second].map((values) => levels.map((level) => values.filter((value) => value === level).length / values.length));
  const [p, q] = shares as [number[], number[]];
  const covariance = new Matrix(levels.map((_, j) => levels.map((_, k) => averageCovariance(p, q, j, k))));
  const cholesky = new CholeskyDecomposition(covariance);
  const difference = Matrix.columnVector(p.map((share, j) => share - (q[j] as number)));
  return Math.sqrt(difference.transpose().mmul(cholesky.solve(difference)).get(0, 0));
}

function averageCovariance(p: readonly number[], q: readonly number[], j: number, k: number): number {
  const of = (shares: readonly number[]) => (j === k ? (shares[j] as number) : 0) - (shares[j] as number) * (shares[k] as number);
  return (of(p) + of(q)) / 2;
}
