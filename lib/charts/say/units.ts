import { decimals } from "./numbers";

/** Days in a month, 365.25/12: stated wherever a month is shown. */
export const daysPerMonth = 30.4375;

/** The two units in which the trade reads an index. */
export type IndexUnit = "days/cm" | "months/cm";
export const indexUnits: readonly IndexUnit[] = ["days/cm", "months/cm"];
/** Every unit in which a clock is shown; records hold months as days. */
export type ClockUnit = IndexUnit | "days" | "mm/day";

const digitsOf: Readonly<Record<ClockUnit, number>> = { "days/cm": 1, "months/cm": 2, days: 1, "mm/day": 2 };

/** A value as the record holds it, in the unit shown. */
export function inUnit(value: number, unit: ClockUnit): number {
  return unit === "months/cm" ? value / daysPerMonth : value;
}

/**
 * A value as the record holds it, written with the digits of the unit shown, without the unit.
 * @example indexText(60.875, "months/cm") // => "2.00"
 */
export function indexText(value: number, unit: ClockUnit): string {
  return decimals(inUnit(value, unit), digitsOf[unit]);
}
