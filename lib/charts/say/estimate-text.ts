import { countedIn } from "./numbers";
import { type ClockUnit, indexText } from "./units";

/** An estimate as the records hold it (days/cm even where months/cm are shown), of `n` segments and their patients. */
export type EstimateRecord = {
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly n: number;
  readonly patients: number;
};

/**
 * An estimate, written one way everywhere. Without an interval it says why there is none; without an estimate, that nothing was there.
 * @example estimateText({ estimate: 31.21, lower: 28.93, upper: 33.49, n: 41, patients: 29 }, "days/cm") // => "31.2 days/cm (95 % CI 28.9 to 33.5; 41 segments in 29 patients)"
 */
export function estimateText({ estimate, lower, upper, n, patients }: EstimateRecord, unit: ClockUnit): string {
  if (estimate === null) return `no estimate (${countedIn(n, patients)})`;
  const interval = intervalText({ lower, upper }, unit) ?? "too few patients for an interval";
  return `${indexText(estimate, unit)} ${unit} (${interval}; ${countedIn(n, patients)})`;
}

/** `95 % CI 28.9 to 33.5`, or null where the record has no interval. */
export function intervalText({ lower, upper }: Pick<EstimateRecord, "lower" | "upper">, unit: ClockUnit): string | null {
  if (lower === null || upper === null) return null;
  return `95 % CI ${indexText(lower, unit)} to ${indexText(upper, unit)}`;
}
