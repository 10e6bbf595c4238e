import { meansByPatient } from "../patient-mean";
import { sideOf, type TwoSides } from "./two-sides";

/** Of each patient with values on both sides: mean of the first minus mean of the second, in the order of first rows. */
export function withinPatientDifferences(two: TwoSides): number[] {
  const [first, second] = ([0, 1] as const).map((side) => {
    const own = sideOf(two, side);
    const means = meansByPatient(own.values, own.patient);
    return new Map([...new Set(own.patient)].map((label, c) => [label, means[c] as number]));
  }) as [Map<string | number, number>, Map<string | number, number>];
  return [...first].flatMap(([label, mean]) => (second.has(label) ? [mean - (second.get(label) as number)] : []));
}
