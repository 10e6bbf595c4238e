import { uprightHairlines } from "../axis/bottom-axis";
import { layHead } from "../head/lay-head";
import { raise } from "../place/fit-pile";
import { press } from "../place/press";
import { symbolMarks } from "../place/symbols";
import { countsText } from "../say/excluded";
import { type CountedOf, shownEstimate } from "../say/shown-estimate";
import type { ShownUnit } from "../say/shown-unit";
import type { Mark } from "../scene";
import { boxPx, layBox } from "../summary/lay-box";
import { layBracket } from "../summary/lay-bracket";
import { type DistributionGroup, type DistributionRecord, type DistributionRow, hasInterval, noMean } from "./record";
import { named, quartilesText, rowText } from "./say";
import type { DistributionScale } from "./scale";

export type StripPlace = {
  readonly y: number;
  readonly width: number;
  readonly radius: number;
  readonly heightPx: number;
  readonly unit: ShownUnit;
  readonly of: CountedOf;
  /** Said before every mark where there are several groups. */
  readonly name: string | null;
  readonly band: DistributionRecord["band"];
};

const summaryPx = 32;

/** One group: its head, its values piled on a line, under them quartiles and median, then the mean in its brackets. */
export function layStrip(group: DistributionGroup, scale: DistributionScale, place: StripPlace): { marks: readonly Mark[]; end: number } {
  const { y, width, unit, of } = place;
  const mean = group.mean ?? noMean;
  const head = layHead({ name: group.label, estimate: shownEstimate(mean, unit, of), counts: [countsText(group, of)] }, { x: 0, y, width });
  const rows = standing(group, scale);
  const from = y + head.height + 6;
  if (rows.length === 0) return { marks: head.marks, end: from };
  const raised = raise(xsOf(rows), place.radius, Number.POSITIVE_INFINITY);
  const { xs } = raised;
  const heights = press(raised.heights, place.heightPx, place.radius);
  const line = from + Math.max(10, Math.min(raised.height, place.heightPx));
  const pile = symbolMarks({
    shape: "disc",
    size: place.radius * 0.92,
    ink: "series1",
    xs,
    ys: heights.map((height) => line - 0.5 - height),
    labelOf: (at) => rowText((rows[at] as (typeof rows)[number]).row, unit, place.name),
  });
  const summary = summaryMarks(group, scale, { ...place, y: line + 6 });
  const end = line + (summary.length > 0 ? summaryPx : 6);
  const ground = groundMarks(scale, place, { from, to: end, line });
  return { marks: [...head.marks, ...ground, ...pile, ...summary], end };
}

/** Rows from left to right. */
export function standing({ rows = [] }: DistributionGroup, scale: DistributionScale): { row: DistributionRow; x: number }[] {
  return rows
    .filter(({ value }) => Number.isFinite(value))
    .map((row) => ({ row, x: scale.x(row.value) }))
    .sort((a, b) => a.row.value - b.row.value || (a.row.segment ?? a.row.person) - (b.row.segment ?? b.row.person));
}

export const xsOf = (rows: readonly { readonly x: number }[]) => rows.map(({ x }) => x);

type Span = { readonly from: number; readonly to: number; readonly line: number };

/** Band of a norm, hairlines, a stronger rule at zero where values lie on both sides of it, and the line of the pile. */
function groundMarks(scale: DistributionScale, { band }: StripPlace, { from, to, line }: Span): Mark[] {
  const { axis, left, right } = scale;
  const marks: Mark[] = [];
  if (band) {
    const [x1, x2] = [band.from, band.to].map((value) => Math.min(right, Math.max(left, axis.at(value)))) as [number, number];
    marks.push({ mark: "band", x: x1, width: x2 - x1, y: from, height: to - from, ink: "deep", opacity: 0.14, label: band.label });
  }
  marks.push(...uprightHairlines(axis, { from, to }));
  if (axis.from < 0 && axis.to > 0)
    marks.push({ mark: "rule", x1: axis.at(0), x2: axis.at(0), y1: from, y2: to, ink: "muted", weight: 1, dash: "short" });
  return [...marks, { mark: "rule", x1: left, x2: right, y1: line, y2: line, ink: "muted", weight: 1 }];
}

/** A group too small for an interval shows its values alone. */
function summaryMarks(group: DistributionGroup, scale: DistributionScale, { y, unit, of, name }: StripPlace): Mark[] {
  if (!hasInterval(group)) return [];
  const mean = group.mean ?? noMean;
  const text = quartilesText(group, unit);
  const box = layBox(
    { lower: group.quartiles?.lower ?? null, median: group.median?.estimate ?? null, upper: group.quartiles?.upper ?? null },
    scale,
    { y, ...(text === null ? {} : { label: named(name, text) }) },
  );
  const bracket = layBracket(mean, scale.axis.at, {
    y: y + boxPx + 11,
    label: named(name, `mean ${shownEstimate(mean, unit, of)}`),
    edges: [scale.left, scale.right],
  });
  return [...box, ...bracket];
}
