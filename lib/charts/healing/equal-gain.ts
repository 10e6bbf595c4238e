import { decimals } from "../say/numbers";

export type EqualGain = {
  readonly gainMm: number;
  readonly days: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly daysPerCm: number | null;
} | null;
type Group = { readonly label: string; readonly daysAtMedianGain: EqualGain };

/**
 * Days at one gain, the unhealed in: the comparison that an index can't give, since part of the days doesn't depend on gain.
 * `null` where no group has it.
 */
export function equalGainText(groups: readonly Group[]): string | null {
  const known = groups.flatMap(({ label, daysAtMedianGain: at }) =>
    at === null || at.days === null ? [] : [{ label, at, days: at.days }],
  );
  const [first] = known;
  if (!first) return null;
  const said = known.map(({ label, at, days }) => `${groups.length > 1 ? `${label} ` : ""}${daysText(at, days)}`);
  return `With the unhealed in, at the cohort’s median gain of ${decimals(first.at.gainMm, 0)} mm: ${said.join("; ")}.`;
}

function daysText({ lower, upper }: NonNullable<EqualGain>, days: number): string {
  const interval = lower === null || upper === null ? "no interval" : `95 % CI ${decimals(lower, 0)} to ${decimals(upper, 0)}`;
  return `${decimals(days, 0)} days (${interval})`;
}
