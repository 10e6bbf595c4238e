import { estimateText } from "../say/estimate-text";
import type { ClockUnit } from "../say/units";
import type { Mark } from "../scene";
import { boxPx, layBox } from "../summary/lay-box";
import { layBracket } from "../summary/lay-bracket";
import type { HealingGroupForFigure } from "./record";
import { quartilesText } from "./say";
import type { ValueScale } from "./scale";

export const summaryPx = 30;

type Place = { readonly y: number; readonly unit: ClockUnit; readonly name: string | null };

/**
 * Under the line: the quartiles as a hairline box with the median across it; under that the mean between the brackets of its interval.
 * A group too small for an interval shows its values alone.
 */
export function summaryMarks(group: HealingGroupForFigure, scale: ValueScale, place: Place): Mark[] {
  if (group.mean.lower === null) return [];
  return [...boxMarks(group, scale, place), ...bracketMarks(group, scale, { ...place, y: place.y + boxPx + 11 })];
}

function boxMarks(group: HealingGroupForFigure, scale: ValueScale, { y, unit, name }: Place): Mark[] {
  const { lower, upper } = group.quartiles;
  const text = quartilesText(group, unit);
  return layBox({ lower, median: group.median.estimate, upper }, scale, { y, ...(text === null ? {} : { label: named(name, text) }) });
}

function bracketMarks({ mean }: HealingGroupForFigure, scale: ValueScale, { y, unit, name }: Place): Mark[] {
  if (mean.estimate === null) return [];
  return layBracket(mean, scale.x, { y, label: named(name, `mean ${estimateText(mean, unit)}`) });
}

function named(name: string | null, text: string): string {
  return name === null ? text : `${name}: ${text}`;
}
