import { decimals } from "../say/numbers";
import type { EqualGain, HealingGroupForFigure } from "./record";

const mostNamed = 3;
type Known = { readonly label: string; readonly at: NonNullable<EqualGain>; readonly days: number };

/**
 * Days at one gain, the unhealed in: the comparison that an index can't give, since part of the days doesn't depend on gain.
 * Of more than three groups only the least and the most are named; the table holds all. `null` where no group has it.
 */
export function equalGainText(groups: readonly Pick<HealingGroupForFigure, "label" | "daysAtMedianGain">[]): string | null {
  const known = groups.flatMap(({ label, daysAtMedianGain: at }) =>
    at === null || at.days === null ? [] : [{ label, at, days: at.days }],
  );
  const sorted = [...known].sort((a, b) => a.days - b.days);
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (!first || !last) return null;
  const start = `With the unhealed in, at the cohort’s median gain of ${decimals(first.at.gainMm, 0)} mm`;
  if (groups.length === 1) return `${start}: ${daysText(first)}.`;
  if (known.length <= mostNamed) return `${start}: ${known.map((one) => `${one.label} ${daysText(one)}`).join("; ")}.`;
  return `${start}, the fewest days are those of ${first.label}, ${daysText(first)}, the most those of ${last.label}, ${daysText(last)}.`;
}

function daysText({ at: { lower, upper }, days }: Known): string {
  const interval = lower === null || upper === null ? "no interval" : `95 % CI ${decimals(lower, 0)} to ${decimals(upper, 0)}`;
  return `${decimals(days, 0)} days (${interval})`;
}
