import { splitWords } from "../figure/title";
import { estimateText } from "../say/estimate-text";
import { listed } from "../say/numbers";
import type { ClockUnit } from "../say/units";
import type { HealingRecordForFigure } from "./record";
import { countsText, totalText } from "./say";

/** Accessible name of the figure. */
export function figureTitle(record: HealingRecordForFigure): string {
  return `${record.definition.title}${splitText(record.by)}`;
}

export function splitText(by: readonly string[]): string {
  return by.length === 0 ? "" : ` by ${listed(by.map(splitWords))}`;
}

/** Accessible description: what is drawn, then each group in words, so that nothing is only to be seen. */
export function figureDescription(record: HealingRecordForFigure, unit: ClockUnit): string {
  if (record.groups.length === 0) return "No segment in this cohort.";
  const groups = record.groups.map((group) => `${group.label}: mean ${estimateText(group.mean, unit)}; ${countsText(group)}.`);
  return `Each segment is a mark on an axis in ${unit}. ${totalText(record.groups)}. ${groups.join(" ")}`;
}
