import { type ShownUnit, shownText, valueText, withUnit } from "../say/shown-unit";
import type { DistributionGroup, DistributionRow } from "./record";

/** What a reader hears of one mark: `Femur: 31.2 mm`. */
export function rowText({ value }: DistributionRow, unit: ShownUnit, name: string | null): string {
  return named(name, valueText(value, unit));
}

/** `quartiles 25.1 to 37.0, median 30.2 mm`; `null` where neither is known. */
export function quartilesText({ quartiles, median }: DistributionGroup, unit: ShownUnit): string | null {
  const [lower, upper, middle] = [quartiles?.lower ?? null, quartiles?.upper ?? null, median?.estimate ?? null];
  if (lower === null && middle === null) return null;
  const text = (value: number | null) => (value === null ? "not reached" : shownText(value, unit));
  const span = lower === null ? null : `quartiles ${text(lower)} to ${text(upper)}`;
  return [span, withUnit(`median ${text(middle)}`, unit)].filter((part) => part !== null).join(", ");
}

export function named(name: string | null, text: string): string {
  return name === null ? text : `${name}: ${text}`;
}
