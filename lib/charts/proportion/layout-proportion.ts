import { axisOf } from "../axis/axis";
import { bottomAxis, bottomAxisPx } from "../axis/bottom-axis";
import { type FigureOptions, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { titleOf } from "../figure/title";
import { bandEntry, bracketEntry, lineEntry, shapeEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import { spanOf } from "../place/span-of";
import { type ShownUnit, shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import type { ProportionRecord } from "./record";
import { describe } from "./say";
import { isDerived, layStrip } from "./strip";

/** Room at the left for the names of the means. */
const leftPx = 52;
const rightPx = 16;
const betweenPx = 22;

/**
 * A proportion before and after, a line a patient, against the band of the norm that was chosen; readings derived from segments in another
 * shape, on dotted lines.
 * @throws RangeError when the width is below 240 px or the unit is none of the proportion's
 */
export function layoutProportion(record: ProportionRecord, { width = usualWidthPx, unit: asked }: FigureOptions = {}): Scene {
  requireWidth("layoutProportion", width);
  const unit = shownUnit(record.unit, asked);
  const title = titleOf(record, `${record.definition.title}, before and after`);
  if (record.groups.length === 0) return nothingScene({ width, title }, "No patient in this cohort.");
  const drawn = record.groups.some(({ marks }) => marks.length > 0);
  const [left, right] = [leftPx, width - rightPx];
  const axis = axisOf({ ...extentOf(record), start: left, end: right, unit, ticks: right - left < 420 ? 4 : 8 });
  const key = drawn ? layKey(keyOf(record), { width, y: 0 }) : { marks: [], height: -12 };
  const marks: Mark[] = [...key.marks];
  let cursor = key.height + 12;
  for (const group of record.groups) {
    const strip = layStrip(group, { y: cursor, width, axis, left, right, unit, name: record.groups.length > 1 ? group.label : null });
    marks.push(...strip.marks);
    cursor = strip.end + betweenPx;
  }
  const text = { width, title, description: describe(record, unit) };
  if (!drawn) return { ...text, height: Math.ceil(cursor - betweenPx), marks };
  const y = cursor - betweenPx + 10;
  marks.push(...bottomAxis(axis, { y, left, right, title: axisTitle(record, unit) }));
  return { ...text, height: Math.ceil(y + bottomAxisPx), marks };
}

function axisTitle({ definition }: ProportionRecord, { name }: ShownUnit): string {
  return name === "ratio" || name === "" ? definition.title.toLowerCase() : `${name}, ${definition.title.toLowerCase()}`;
}

/** All that is drawn, the band of each norm whole. */
function extentOf({ groups }: ProportionRecord): { from: number; to: number } {
  const values = groups.flatMap(({ marks, norm, before, after }) => [
    ...marks.flatMap((mark) => [mark.before, mark.after]),
    ...(norm && marks.length > 0 ? [norm.from, norm.to] : []),
    ...[before.estimate, after.estimate].filter((mean) => mean !== null),
  ]);
  const [from, to] = spanOf(values) ?? [0, 1];
  return { from, to };
}

function keyOf({ groups }: ProportionRecord): KeyEntry[] {
  const marks = groups.flatMap((group) => group.marks);
  const labels = new Set(groups.flatMap(({ norm, marks: own }) => (norm && own.length > 0 ? [norm.label] : [])));
  const entries = [
    beforeEntry,
    marks.some(({ afterHow }) => afterHow === "measured") && shapeEntry("after, measured"),
    marks.some(({ afterHow }) => afterHow === "derived") && shapeEntry("after, derived", { shape: "diamond", ink: "series2" }),
    marks.some(isDerived) && lineEntry("a reading is derived", { ink: "muted", dash: "dot", weight: 1 }),
    groups.some(({ before }) => before.lower !== null) && bracketEntry("mean, 95 % CI"),
    ...[...labels].map((label) => bandEntry(label)),
  ];
  return entries.filter((entry) => entry !== false);
}

const beforeEntry: KeyEntry = {
  text: "before",
  wide: 6,
  draw: (x, y) => [{ mark: "rule", x1: x + 3, x2: x + 3, y1: y - 4.5, y2: y + 4.5, ink: "ink", weight: 1.5 }],
};
