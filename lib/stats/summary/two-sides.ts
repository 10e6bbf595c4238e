import { type GroupLabels, pairOf, rowsOfPair } from "../cluster/groups";
import type { PatientLabels } from "../record";

export interface TwoSides {
  readonly pair: readonly [string | number, string | number];
  readonly values: readonly number[];
  readonly patient: PatientLabels;
  /** 0 or 1 a row: the first or the second group. */
  readonly sides: Int32Array;
}

/** The rows of the two groups compared. */
export function twoSides(
  caller: string,
  input: {
    values: readonly number[];
    group: GroupLabels;
    patient: PatientLabels;
    between?: readonly [string | number, string | number] | undefined;
  },
): TwoSides {
  const pair = pairOf(caller, input.group, input.between);
  const { rows, sides } = rowsOfPair(input.group, pair);
  return {
    pair,
    sides,
    values: rows.map((row) => input.values[row] as number),
    patient: rows.map((row) => input.patient[row] as string | number),
  };
}

/** The values and patients of one side. */
export function sideOf({ values, patient, sides }: TwoSides, side: 0 | 1) {
  return { values: values.filter((_, i) => sides[i] === side), patient: patient.filter((_, i) => sides[i] === side) };
}
