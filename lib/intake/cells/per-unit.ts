import type { Field } from "@/lib/codebook";
import type { HeaderUnit } from "../match/header-unit";

/** Days in a month: 365.25 / 12. */
export const daysPerMonth = 30.4375;

const inMm: Readonly<Partial<Record<HeaderUnit, number>>> = { mm: 1, cm: 10, m: 1000, in: 25.4 };
const inDays: Readonly<Partial<Record<HeaderUnit, number>>> = { days: 1, weeks: 7, months: daysPerMonth, years: 365.25 };
const inYears: Readonly<Partial<Record<HeaderUnit, number>>> = { years: 1, months: 1 / 12 };

/** What one of a unit is in the field's own unit; 1 without a unit, `null` when the two have nothing to do with each other. */
export function perUnit(field: Field, unit: HeaderUnit | null): number | null {
  if (unit === null) return 1;
  if (field.kind === "day" || field.kind === "count") return inDays[unit] ?? null;
  if (field.kind !== "number") return null;
  if (field.unit === "mm") return inMm[unit] ?? null;
  if (field.unit === "years") return inYears[unit] ?? null;
  return field.unit === unit ? 1 : null;
}
