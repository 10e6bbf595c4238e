import { thresholds } from "@/lib/stats";
import { excludedIn } from "../figure/source";
import type { Head } from "../head/lay-head";
import { reasonsText } from "../say/excluded";
import { counted, countedIn, grouped } from "../say/numbers";
import { percentText, shownLimits } from "../say/shown-estimate";
import { type ShownUnit, shownUnit, valueText } from "../say/shown-unit";
import type { CurveKind } from "./kind";
import { type CurveGroup, type CurvePointForFigure, type CurveRecord, commonDay, lastDay, shareBy, shownPoints } from "./record";

/** What stands over a curve: the median where the record has it, else the share by the day that all groups reach; counts; why there is none. */
export function headOf(group: CurveGroup, record: CurveRecord, kind: CurveKind, unit: ShownUnit): Head {
  const shown = shownPoints(group).length > 0;
  const gain = group.medianGainMm ?? null;
  const lines = gain === null ? [] : [`median gain ${valueText(gain, shownUnit("mm", "cm"))}`];
  const lead = leadText(group, record, kind, unit);
  const short = shown || group.n === 0 ? null : `fewer than ${thresholds.atRiskShown} at risk: no curve`;
  return {
    name: group.label,
    estimate: lead ?? short ?? "no curve",
    lines: lead === null || short === null ? lines : [...lines, short],
    counts: [curveCounts(group, kind)],
  };
}

function leadText(group: CurveGroup, { groups }: CurveRecord, kind: CurveKind, unit: ShownUnit): string | null {
  const median = group.medianDays;
  if (median)
    return median.estimate === null
      ? "median not reached"
      : `half ${kind.done} by ${shownLimits(median, { ...unit, digits: unit.valueDigits })}`;
  const day = commonDay(groups);
  const point = day === null ? null : shareBy(group, day);
  return point === null || day === null ? null : pointText(point, kind, unit, day);
}

/** `62 % (95 % CI 51 to 72) healed by 180 days`. */
export function pointText(point: CurvePointForFigure, kind: CurveKind, unit: ShownUnit, day = point.day): string {
  const { lower, upper } = point;
  const interval = lower === null || upper === null ? "no interval" : `95 % CI ${percentText(lower)} to ${percentText(upper)}`;
  return `${percentText(point.estimate)} % (${interval}) ${kind.done} by ${valueText(day, unit)}`;
}

/** `43 segments in 30 patients: 41 on the curve, 35 healed; 2 left out (2 no film)`; on the curve and left out add up. */
function curveCounts(group: CurveGroup, { done }: CurveKind): string {
  const out = excludedIn(group);
  const all = `${countedIn(group.segments, group.patients)}: ${grouped(group.n)} on the curve`;
  const events = group.events === undefined ? "" : `, of whom ${grouped(group.events)} ${done}`;
  return `${all}${events}${out === 0 ? "" : `; ${grouped(out)} left out (${reasonsText(group)})`}`;
}

export function totalText(groups: readonly CurveGroup[], kind: CurveKind): string {
  const [only] = groups;
  if (only && groups.length === 1) return curveCounts(only, kind);
  const sum = (pick: (group: CurveGroup) => number) => groups.reduce((total, group) => total + pick(group), 0);
  const [segments, n, out] = [sum((group) => group.segments), sum((group) => group.n), sum(excludedIn)];
  return `${counted(segments, "segment")} in ${counted(groups.length, "group")}: ${grouped(n)} on a curve${out === 0 ? "" : `, ${grouped(out)} left out`}`;
}

/** The share at each day told, for whoever doesn't see the curve. */
export function describe(record: CurveRecord, kind: CurveKind, unit: ShownUnit, days: readonly number[]): string {
  const groups = record.groups.map((group) => {
    const { estimate = "", counts = [] } = headOf(group, record, kind, unit);
    const points = days.flatMap((day) => {
      const point = day === 0 ? null : shareBy(group, day);
      return point === null ? [] : [`${percentText(point.estimate)} % by ${valueText(day, unit)}`];
    });
    return `${group.label}: ${[estimate, ...points, ...counts].join("; ")}.`;
  });
  return `Stepped curves of the ${kind.title}, up to ${valueText(lastDay(record.groups), unit)}. ${totalText(record.groups, kind)}. ${groups.join(" ")}`;
}
