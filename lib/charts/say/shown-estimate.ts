import type { Estimated, Limits, ShareForFigure } from "../figure/source";
import { counted, countedIn, decimals, grouped } from "./numbers";
import { type ShownUnit, shownText, withUnit } from "./shown-unit";

/** Of whom a measure is: its n counts segments in patients, or patients alone. */
export type CountedOf = "segment" | "person";

/** How many, as every estimate says it: `41 segments in 29 patients`, or `29 patients`. */
export function howMany({ n, patients }: Pick<Estimated, "n" | "patients">, of: CountedOf = "segment"): string {
  return of === "segment" ? countedIn(n, patients) : counted(n, "patient");
}

/**
 * An estimate in its one form, in whatever unit is shown.
 * @example shownEstimate({ estimate: 4.21, lower: -1, upper: 9.4, n: 9, patients: 7 }, { name: "mm", perRecord: 1, digits: 1, valueDigits: 0 }) // => "4.2 mm (95 % CI −1.0 to 9.4; 9 segments in 7 patients)"
 */
export function shownEstimate(estimated: Estimated, unit: ShownUnit, of: CountedOf = "segment"): string {
  if (estimated.estimate === null) return `no estimate (${howMany(estimated, of)})`;
  const interval = shownInterval(estimated, unit) ?? "too few patients for an interval";
  return `${withUnit(shownText(estimated.estimate, unit), unit)} (${interval}; ${howMany(estimated, of)})`;
}

/** The same without the n: `4.2 mm (95 % CI −1.0 to 9.4)`. */
export function shownLimits(limits: Limits, unit: ShownUnit): string {
  if (limits.estimate === null) return "no estimate";
  return `${withUnit(shownText(limits.estimate, unit), unit)} (${shownInterval(limits, unit) ?? "no interval"})`;
}

/** `95 % CI −1.0 to 9.4`; an end that was never reached is said to be so. `null` without an interval. */
export function shownInterval({ lower, upper }: Pick<Limits, "lower" | "upper">, unit: ShownUnit): string | null {
  if (lower === null && upper === null) return null;
  const end = (value: number | null) => (value === null ? "not reached" : shownText(value, unit));
  return `95 % CI ${end(lower)} to ${end(upper)}`;
}

/** Percent of a share, without a sign: `61`; one decimal below ten. */
export function percentText(share: number): string {
  const percent = share * 100;
  return decimals(percent, percent > 0 && percent < 9.95 ? 1 : 0);
}

/**
 * A share in its one form: always with its counts.
 * @example shareText({ x: 3, n: 40, patients: 31, estimate: 0.075, lower: 0.026, upper: 0.2 }) // => "3 of 40, 7.5 % (95 % CI 2.6 to 20)"
 */
export function shareText({ x, n, estimate, lower, upper }: ShareForFigure): string {
  if (n === 0 || estimate === null) return `${grouped(x)} of ${grouped(n)}`;
  const interval = lower === null || upper === null ? "too few patients for an interval" : percentInterval({ lower, upper });
  return `${grouped(x)} of ${grouped(n)}, ${percentText(estimate)} % (${interval})`;
}

function percentInterval({ lower, upper }: { readonly lower: number; readonly upper: number }): string {
  return `95 % CI ${percentText(lower)} to ${percentText(upper)}`;
}
