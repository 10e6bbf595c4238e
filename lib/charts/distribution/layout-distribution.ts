import { bottomAxis, bottomAxisPx } from "../axis/bottom-axis";
import { type FigureOptions, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { titleOf } from "../figure/title";
import { bandEntry, boxEntry, bracketEntry, lineEntry, shapeEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import { radiusFor } from "../place/fit-pile";
import { countsText, totalText } from "../say/excluded";
import { shownEstimate } from "../say/shown-estimate";
import { type ShownUnit, shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { countedOf, type DistributionRecord, hasInterval, noMean } from "./record";
import { type DistributionScale, distributionScale } from "./scale";
import { layStrip, standing, xsOf } from "./strip";

/** Half a number of the axis stands out at both ends. */
const sidePx = 16;
const betweenPx = 22;

/**
 * Any number measure by group, one strip a group over one axis: each value a mark, quartiles and median under the pile, the mean between
 * the brackets of its interval. Values far out stand in a gutter at that end.
 * @throws RangeError when the width is below 240 px or the unit is none of the measure's
 */
export function layoutDistribution(record: DistributionRecord, { width = usualWidthPx, unit: asked }: FigureOptions = {}): Scene {
  requireWidth("layoutDistribution", width);
  const unit = shownUnit(record.unit, asked);
  const title = titleOf(record);
  if (record.groups.length === 0) return nothingScene({ width, title });
  const scale = distributionScale(record, unit, { left: sidePx, right: width - sidePx });
  const drawn = record.groups.some((group) => standing(group, scale).length > 0);
  const key = drawn ? layKey(keyOf(record, scale), { width, y: 0 }) : { marks: [], height: -12 };
  const strips = layStrips(record, scale, { y: key.height + 12, width, unit });
  const text = { width, title, description: describe(record, unit) };
  if (!drawn) return { ...text, height: Math.ceil(strips.end), marks: strips.marks };
  const axisY = strips.end - betweenPx + 10;
  const marks = [...key.marks, ...strips.marks, ...axisMarks(record, scale, { y: axisY, unit })];
  return { ...text, height: Math.ceil(axisY + bottomAxisPx), marks };
}

type Place = { readonly y: number; readonly width: number; readonly unit: ShownUnit };

/** A heap of equal values must not make specks of all marks: below this the pile is pressed instead. */
function leastRadius(most: number): number {
  return most <= 100 ? 2.5 : most <= 600 ? 2 : most <= 2000 ? 1.5 : 1;
}

function layStrips(record: DistributionRecord, scale: DistributionScale, { y, width, unit }: Place) {
  const { groups, band } = record;
  const heightPx = groups.length > 6 ? 72 : 116;
  const rows = groups.map((group) => xsOf(standing(group, scale)));
  const radius = Math.max(leastRadius(Math.max(...rows.map((xs) => xs.length))), radiusFor(rows, heightPx));
  const of = countedOf(record);
  const marks: Mark[] = [];
  let cursor = y;
  for (const group of groups) {
    const name = groups.length > 1 ? group.label : null;
    const strip = layStrip(group, scale, { y: cursor, width, unit, radius, heightPx, of, name, band });
    marks.push(...strip.marks);
    cursor = strip.end + betweenPx;
  }
  return { marks, end: cursor };
}

function axisMarks(record: DistributionRecord, scale: DistributionScale, { y, unit }: { y: number; unit: ShownUnit }): Mark[] {
  const title = record.definition.title.toLowerCase();
  const marks = bottomAxis(scale.axis, { y, left: scale.left, right: scale.right, title: unitTitle(unit, title) });
  const arrow = (x: number, text: string): Mark => ({ mark: "text", x, y: y + 18, text, ink: "ink", size: 13, anchor: "middle" });
  if (scale.before !== null) marks.push(arrow(scale.before, "←"));
  if (scale.beyond !== null) marks.push(arrow(scale.beyond, "→"));
  return marks;
}

export function unitTitle({ name }: Pick<ShownUnit, "name">, title: string): string {
  return name === "" || name === "ratio" ? title : `${name}, ${title}`;
}

function keyOf(record: DistributionRecord, { axis }: DistributionScale): KeyEntry[] {
  const { groups, band } = record;
  const summed = groups.some(hasInterval);
  const entries = [
    shapeEntry(countedOf(record) === "segment" ? "a segment" : "a patient"),
    summed && boxEntry("quartiles, median"),
    summed && bracketEntry("mean, 95 % CI"),
    axis.from < 0 && axis.to > 0 && lineEntry("zero", { ink: "muted", dash: "short", weight: 1 }),
    band !== undefined && bandEntry(band.label),
  ];
  return entries.filter((entry) => entry !== false);
}

function describe(record: DistributionRecord, unit: ShownUnit): string {
  const of = countedOf(record);
  const groups = record.groups.map(
    (group) => `${group.label}: mean ${shownEstimate(group.mean ?? noMean, unit, of)}; ${countsText(group, of)}.`,
  );
  const noun = of === "segment" ? "segment" : "patient";
  return `Each ${noun} is a mark on an axis in ${unit.name === "" ? "its own unit" : unit.name}. ${totalText(record.groups, of)}. ${groups.join(" ")}`;
}
