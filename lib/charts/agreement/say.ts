import { thresholds } from "@/lib/stats";
import type { Head } from "../head/lay-head";
import { countsText, totalText } from "../say/excluded";
import { shownEstimate, shownLimits } from "../say/shown-estimate";
import { type ShownUnit, shownText, valueText, withUnit } from "../say/shown-unit";
import type { AgreementGroup, AgreementRecord } from "./record";

/** `gained less planned at start`. */
export function differenceText({ between: [first, second] }: AgreementRecord): string {
  return `${first} less ${second}`;
}

export function headOf(group: AgreementGroup, unit: ShownUnit): Head {
  const { limits } = group;
  const few = `fewer than ${thresholds.patientsForBootstrap} patients: the differences themselves, no limits`;
  const text = limits === null ? (group.n === 0 ? [] : [few]) : [limitsText(limits, unit)];
  return {
    name: group.label,
    estimate: `${group.n === 0 ? "" : "bias "}${shownEstimate(group.bias, unit)}`,
    lines: [...text, ...spreadText(group, unit)],
    counts: [countsText(group)],
  };
}

/** `median −0.5 mm; nine in ten from −13.0 to 1.5 mm`; of a group too small for an interval its values alone. */
function spreadText({ spread = null, bias }: AgreementGroup, unit: ShownUnit): string[] {
  if (spread === null || bias.lower === null) return [];
  const ends = `${shownText(spread.p5, unit)} to ${withUnit(shownText(spread.p95, unit), unit)}`;
  return [`median ${withUnit(shownText(spread.median, unit), unit)}; nine in ten from ${ends}`];
}

/** `limits of agreement from −8.2 mm (95 % CI −9.3 to −7.1) to 5.1 mm (95 % CI 4.0 to 6.2)`. */
function limitsText({ lower, upper }: NonNullable<AgreementGroup["limits"]>, unit: ShownUnit): string {
  return `limits of agreement from ${shownLimits(lower, unit)} to ${shownLimits(upper, unit)}`;
}

/** What a reader hears of one segment: `48 and 50 mm, difference −2 mm`. */
export function markText(
  { first, second }: AgreementGroup["marks"][number],
  record: AgreementRecord,
  unit: ShownUnit,
  name: string | null,
): string {
  const [a, b] = record.between;
  const words = `${a} ${valueText(first, unit)}, ${b} ${valueText(second, unit)}, difference ${valueText(first - second, unit)}`;
  return name === null ? words : `${name}: ${words}`;
}

export function describe(record: AgreementRecord, unit: ShownUnit): string {
  const groups = record.groups.map((group) => {
    const { estimate = "", lines = [], counts = [] } = headOf(group, unit);
    return `${group.label}: ${[estimate, ...lines, ...counts].join("; ")}.`;
  });
  const axes = `Each segment is a mark: the mean of both readings across, ${differenceText(record)} upwards.`;
  return [axes, `${totalText(record.groups)}.`, ...groups].join(" ");
}
