import type { Head } from "../head/lay-head";
import { countsText, totalText } from "../say/excluded";
import { grouped } from "../say/numbers";
import { shownEstimate, shownLimits } from "../say/shown-estimate";
import { type ShownUnit, valueText } from "../say/shown-unit";
import type { ProportionGroup, ProportionMark, ProportionRecord } from "./record";

export const done = "before and after";

/** What stands over a group: the change, both means, how many readings were derived, counts. */
export function headOf(group: ProportionGroup, unit: ShownUnit): Head {
  const means = `before ${shownLimits(group.before, unit)}, after ${shownLimits(group.after, unit)}`;
  const estimate = `${group.n === 0 ? "" : "change "}${shownEstimate(group.change, unit, "person")}`;
  return {
    name: group.label,
    estimate,
    lines: group.n === 0 ? [] : [means],
    counts: [countsText(group, "person", done), ...derivedText(group)],
  };
}

/** `9 of 24 readings after and 2 before derived from the segments’ gains`. */
export function derivedText({ marks }: ProportionGroup): string[] {
  const after = marks.filter(({ afterHow }) => afterHow === "derived").length;
  const before = marks.filter(({ beforeHow }) => beforeHow === "derived").length;
  if (after + before === 0) return [];
  return [
    `derived from segments, not measured: ${grouped(before)} of ${grouped(marks.length)} before, ${grouped(after)} of ${grouped(marks.length)} after`,
  ];
}

/** What a reader hears of one patient: `0.812 before (measured), 0.783 after (derived)`. */
export function markText({ before, after, beforeHow, afterHow }: ProportionMark, unit: ShownUnit, name: string | null): string {
  const words = `${valueText(before, unit)} before (${beforeHow}), ${valueText(after, unit)} after (${afterHow})`;
  return name === null ? words : `${name}: ${words}`;
}

export function describe(record: ProportionRecord, unit: ShownUnit): string {
  const groups = record.groups.map((group) => {
    const { estimate = "", lines = [], counts = [] } = headOf(group, unit);
    const norm = group.norm ? [`light band: ${group.norm.label}`] : [];
    return `${group.label}: ${[estimate, ...lines, ...norm, ...counts].join("; ")}.`;
  });
  const rows =
    "Each patient is a line from the value before, a tick, to the value after, a mark; patients are in the order of the value before.";
  return [rows, `${totalText(record.groups, "person", done)}.`, ...groups].join(" ");
}
