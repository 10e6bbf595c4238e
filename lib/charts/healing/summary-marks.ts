import { estimateText } from "../say/estimate-text";
import type { ClockUnit } from "../say/units";
import type { Mark } from "../scene";
import type { HealingGroupForFigure } from "./record";
import { quartilesText } from "./say";
import type { ValueScale } from "./scale";

const boxPx = 8;
export const summaryPx = 30;

type Place = { readonly y: number; readonly unit: ClockUnit; readonly name: string | null };

/** Under the line: the quartiles as a hairline box with the median across it; under that the mean between the brackets of its interval. */
export function summaryMarks(group: HealingGroupForFigure, scale: ValueScale, place: Place): Mark[] {
  return [...boxMarks(group, scale, place), ...bracketMarks(group, scale, { ...place, y: place.y + boxPx + 11 })];
}

function boxMarks(group: HealingGroupForFigure, scale: ValueScale, { y, unit, name }: Place): Mark[] {
  const { lower, upper } = group.quartiles;
  const median = group.median.estimate;
  const text = quartilesText(group, unit);
  const label = text === null ? {} : { label: named(name, text) };
  const marks: Mark[] = [];
  if (lower !== null) {
    const from = scale.x(lower);
    // an upper quartile that was not reached leaves the box open
    const d =
      upper === null ? `M${scale.right} ${y}H${from}V${y + boxPx}H${scale.right}` : `M${from} ${y}H${scale.x(upper)}V${y + boxPx}H${from}Z`;
    marks.push({ mark: "path", d, ink: "muted", weight: 1, ...label });
  }
  if (median !== null) {
    const x = scale.x(median);
    marks.push({ mark: "rule", x1: x, x2: x, y1: y - 2, y2: y + boxPx + 2, ink: "ink", weight: 2, ...(lower === null ? label : {}) });
  }
  return marks;
}

function bracketMarks({ mean }: HealingGroupForFigure, scale: ValueScale, { y, unit, name }: Place): Mark[] {
  if (mean.estimate === null) return [];
  const label = named(name, `mean ${estimateText(mean, unit)}`);
  const centre: Mark = { mark: "symbol", shape: "diamond", x: scale.x(mean.estimate), y, size: 4, ink: "ink", label };
  if (mean.lower === null || mean.upper === null) return [centre];
  const [from, to] = [scale.x(mean.lower), scale.x(mean.upper)];
  const ends = `M${from + 3} ${y - 6}H${from}V${y + 6}H${from + 3}M${to - 3} ${y - 6}H${to}V${y + 6}H${to - 3}`;
  return [{ mark: "path", d: `M${from} ${y}H${to}${ends}`, ink: "ink", weight: 1.5 }, centre];
}

function named(name: string | null, text: string): string {
  return name === null ? text : `${name}: ${text}`;
}
