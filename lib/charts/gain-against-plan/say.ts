import type { Head } from "../head/lay-head";
import { countsText, reasonWords, totalText } from "../say/excluded";
import { grouped, listed } from "../say/numbers";
import { shareText, shownEstimate } from "../say/shown-estimate";
import { type ShownUnit, valueText } from "../say/shown-unit";
import type { GainPlanGroup, GainPlanMark, GainPlanRecord } from "./record";

/** What stands over a group: mean error, share within the tolerance, who stopped early and why, counts. */
export function headOf(group: GainPlanGroup, record: GainPlanRecord, unit: ShownUnit): Head {
  const stops = earlyStopsText(group);
  const within = group.n === 0 ? [] : [`${toleranceText(record, unit)}: ${shareText(group.within)}`];
  return {
    name: group.label,
    estimate: `${group.n === 0 ? "" : "gain less plan "}${shownEstimate(group.error, unit)}`,
    lines: stops === null ? within : [...within, stops],
    counts: [countsText(group)],
  };
}

/** `within ±5 mm`, `within ±10 % of the plan`. */
export function toleranceText({ tolerance }: GainPlanRecord, unit: ShownUnit): string {
  return tolerance.within === "mm" ? `within ±${valueText(tolerance.limit, unit)}` : `within ±${tolerance.limit} % of the plan`;
}

/** `3 stopped early: 2 pain and 1 no reason recorded`; early stops are never left out. */
export function earlyStopsText({ marks }: GainPlanGroup): string | null {
  const stopped = marks.filter(({ outcome }) => outcome === "stopped-early");
  if (stopped.length === 0) return null;
  const reasons = new Map<string, number>();
  for (const mark of stopped) reasons.set(reasonOf(mark), (reasons.get(reasonOf(mark)) ?? 0) + 1);
  const sorted = [...reasons].sort(([, a], [, b]) => b - a);
  return `${grouped(stopped.length)} stopped early: ${listed(sorted.map(([reason, n]) => `${grouped(n)} ${reason}`))}`;
}

function reasonOf({ reason }: GainPlanMark): string {
  return reason === null || reason === undefined || reason === "" ? "no reason recorded" : reasonWords(reason);
}

/** What a reader hears of one segment: `45 mm gained of 50 mm planned, 5 mm short, stopped early (pain)`. */
export function markText(mark: GainPlanMark, unit: ShownUnit, name: string | null): string {
  const error = mark.gainMm - mark.plannedMm;
  const missed = error === 0 ? "as planned" : `${valueText(Math.abs(error), unit)} ${error < 0 ? "short" : "over"}`;
  const fate = mark.outcome === "stopped-early" ? `, stopped early (${reasonOf(mark)})` : "";
  const words = `${valueText(mark.gainMm, unit)} gained of ${valueText(mark.plannedMm, unit)} planned, ${missed}${fate}`;
  return name === null ? words : `${name}: ${words}`;
}

export function describe(record: GainPlanRecord, unit: ShownUnit): string {
  const groups = record.groups.map((group) => {
    const { estimate = "", lines = [], counts = [] } = headOf(group, record, unit);
    return `${group.label}: ${[estimate, ...lines, ...counts].join("; ")}.`;
  });
  const axes = "Each segment is a mark: length planned across, length gained upwards; on the slanted line both are equal.";
  return [axes, `${totalText(record.groups)}.`, ...groups].join(" ");
}
