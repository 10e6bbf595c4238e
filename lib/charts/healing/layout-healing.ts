import { radiusFor, raise } from "../place/fit-pile";
import type { ClockUnit } from "../say/units";
import type { Mark, Scene } from "../scene";
import { axisMarks, axisPx } from "./axis-marks";
import { figureDescription, figureTitle } from "./figure-text";
import { headMarks } from "./head-marks";
import { keyMarks } from "./key-marks";
import { measuredMarks, pileMarks } from "./pile-marks";
import type { HealingGroupForFigure, HealingRecordForFigure } from "./record";
import { type ValueScale, valueScale } from "./scale";
import { summaryMarks, summaryPx } from "./summary-marks";
import { unhealedMarks } from "./unhealed-marks";

export type HealingFigureOptions = { readonly width?: number; readonly unit?: ClockUnit };

/** Room at both ends of the axis, so that marks and end ticks aren't cut. */
const sidePx = 10;
const betweenPx = 22;

/**
 * Healing by group, one strip a group over one axis: each segment a mark. The healed are piled on a line; below it stand quartiles and
 * median, then the mean with its interval, then, apart, the unhealed. Over each strip its mean and counts in words.
 * `width` px; `unit` only changes what is shown.
 */
export function layoutHealing(record: HealingRecordForFigure, { width = 880, unit = "days/cm" }: HealingFigureOptions = {}): Scene {
  if (!(width >= 240)) throw new RangeError(`layoutHealing requires a width of at least 240 px, received ${width}`);
  const scale = valueScale(record, unit, { left: sidePx, right: width - sidePx });
  const text = { width, title: figureTitle(record), description: figureDescription(record, unit) };
  if (!record.groups.some((group) => group.marks.length > 0)) return withoutMarks(record, scale, { ...text, unit });
  const key = keyMarks(record, { width, y: 0 });
  const strips = layoutStrips(record, scale, { y: key.height + 12, width, unit });
  const axisY = strips.end - betweenPx + 10;
  const axis = axisMarks(scale, { y: axisY, title: `${unit}, ${record.definition.title.toLowerCase()}` });
  const hairlines = strips.spans.flatMap((span) => clipped(axis.behind, span));
  return { ...text, height: Math.ceil(axisY + axisPx), marks: [...key.marks, ...hairlines, ...strips.marks, ...axis.front] };
}

/** Nothing has a value: the heads say why, and no axis stands under nothing. */
function withoutMarks(
  record: HealingRecordForFigure,
  scale: ValueScale,
  { unit, ...text }: Pick<Scene, "width" | "title" | "description"> & { unit: ClockUnit },
): Scene {
  const { marks, end } = layoutStrips(record, scale, { y: 0, width: text.width, unit });
  const nothing: Mark = { mark: "text", x: 0, y: 14, text: "No segment in this cohort.", ink: "muted", size: 13.5 };
  return record.groups.length === 0 ? { ...text, height: 24, marks: [nothing] } : { ...text, height: Math.ceil(end), marks };
}

type Span = readonly [from: number, to: number];
type Place = { readonly y: number; readonly width: number; readonly unit: ClockUnit };

function layoutStrips(record: HealingRecordForFigure, scale: ValueScale, { y, width, unit }: Place) {
  const heightPx = record.groups.length > 6 ? 100 : 116;
  const radius = radiusFor(
    record.groups.map((group) => measuredMarks(group, scale).xs),
    heightPx,
  );
  const marks: Mark[] = [];
  const spans: Span[] = [];
  let cursor = y;
  for (const group of record.groups) {
    const strip = layoutStrip(group, scale, {
      y: cursor,
      width,
      unit,
      radius,
      heightPx,
      name: record.groups.length > 1 ? group.label : null,
    });
    // one by one: as arguments of one call more than a hundred thousand fail
    for (const mark of strip.marks) marks.push(mark);
    spans.push(strip.span);
    cursor = strip.end + betweenPx;
  }
  return { marks, spans, end: cursor };
}

type StripPlace = Place & { readonly radius: number; readonly heightPx: number; readonly name: string | null };

function layoutStrip(group: HealingGroupForFigure, scale: ValueScale, { y, width, unit, radius, heightPx, name }: StripPlace) {
  const head = headMarks(group, { y, width, unit });
  const from = y + head.height + 6;
  if (group.marks.length === 0) return { marks: head.marks, span: [from, from] as Span, end: from };
  const measured = measuredMarks(group, scale);
  const { xs, heights, height } = raise(measured.xs, radius, heightPx);
  const line = from + height;
  const pile = pileMarks(group, { marks: measured.marks, xs, heights, radius }, { y: line - 0.5, unit, name });
  const summary = summaryMarks(group, scale, { y: line + 6, unit, name });
  const summaryHeight = summary.length > 0 ? summaryPx : 4;
  const unhealed = unhealedMarks(group, scale, { y: line + summaryHeight + 4, unit, name });
  const end = line + summaryHeight + (unhealed.height > 0 ? unhealed.height + 4 : 0);
  const baseline: Mark = { mark: "rule", x1: scale.left, x2: scale.right, y1: line, y2: line, ink: "muted", weight: 1 };
  return { marks: [...head.marks, baseline, ...pile, ...summary, ...unhealed.marks], span: [from, end] as Span, end };
}

/** The hairlines of the axis, only through the strips: text stands on clean paper. */
function clipped(rules: readonly Mark[], [from, to]: Span): Mark[] {
  return rules.map((rule) => (rule.mark === "rule" ? { ...rule, y1: from, y2: to } : rule));
}
