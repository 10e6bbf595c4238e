import { decimals } from "./numbers";
import { daysPerMonth } from "./units";

/** How a value as the record holds it is shown. `digits` of an estimate, `valueDigits` of a single value. */
export type ShownUnit = {
  readonly name: string;
  readonly perRecord: number;
  readonly digits: number;
  readonly valueDigits: number;
};

/** For each unit of a record the units in which the trade reads it; the first is shown unless told. */
const readIn: Readonly<Record<string, readonly (readonly [name: string, perRecord: number])[]>> = {
  "days/cm": [
    ["days/cm", 1],
    ["months/cm", 1 / daysPerMonth],
  ],
  days: [
    ["days", 1],
    ["months", 1 / daysPerMonth],
  ],
  mm: [
    ["mm", 1],
    ["cm", 0.1],
  ],
};

const digitsOf: Readonly<Record<string, readonly [digits: number, valueDigits: number]>> = {
  "days/cm": [1, 1],
  "months/cm": [2, 2],
  days: [1, 0],
  months: [1, 1],
  mm: [1, 0],
  cm: [2, 1],
  "mm/day": [2, 2],
  ratio: [3, 3],
  "%": [1, 1],
  deg: [1, 0],
  z: [2, 2],
  centile: [0, 0],
};

/** The units between which a reader can choose. */
export function unitsFor(recordUnit: string): readonly string[] {
  return (readIn[recordUnit] ?? [[recordUnit, 1] as const]).map(([name]) => name);
}

/**
 * @throws RangeError when values of that record are never read in that unit
 * @example shownUnit("days", "months").digits // => 1
 */
export function shownUnit(recordUnit: string, shown: string = unitsFor(recordUnit)[0] ?? recordUnit): ShownUnit {
  const found = (readIn[recordUnit] ?? [[recordUnit, 1] as const]).find(([name]) => name === shown);
  if (!found) throw new RangeError(`shownUnit requires ${unitsFor(recordUnit).join(" or ")} for ${recordUnit}, received ${shown}`);
  const [digits, valueDigits] = digitsOf[shown] ?? [1, 1];
  return { name: shown, perRecord: found[1], digits, valueDigits };
}

/** An estimate in the unit shown, without the unit. */
export function shownText(value: number, unit: ShownUnit): string {
  return decimals(value * unit.perRecord, unit.digits);
}

/** A single value in the unit shown, with the unit. */
export function valueText(value: number, unit: ShownUnit): string {
  return withUnit(decimals(value * unit.perRecord, unit.valueDigits), unit);
}

/** `31.2 days/cm`, `61 %`; a ratio, a z or a share of itself has no unit behind it. */
export function withUnit(text: string, { name }: Pick<ShownUnit, "name">): string {
  return name === "ratio" || name === "" ? text : name === "z" ? `z ${text}` : name === "deg" ? `${text}°` : `${text} ${name}`;
}
