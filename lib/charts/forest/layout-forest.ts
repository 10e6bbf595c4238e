import type { Axis } from "../axis/axis";
import { bottomAxis, bottomAxisPx } from "../axis/bottom-axis";
import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { titleOf } from "../figure/title";
import { bracketEntry } from "../key/entries";
import { layKey } from "../key/lay-key";
import { textWidth, wrapText } from "../place/text-width";
import { counted } from "../say/numbers";
import type { ShownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import type { ForestRecord } from "./record";
import { type Columns, estimateOf, forestRow, headingRow, rowText } from "./rows";
import { forestAxis, forestUnit, noDifference } from "./scale";

/**
 * Differences or ratios, a row each, between the brackets of their intervals about the line of no difference; hollow: not tested, or not
 * comparable. An interval that runs over the edge has no bracket there.
 * @throws RangeError when the width is below 240 px or the unit is none of the estimates'
 */
export function layoutForest(record: ForestRecord, { width = usualWidthPx, unit: asked }: FigureOptions = {}): Scene {
  requireWidth("layoutForest", width);
  const unit = forestUnit(record, asked);
  const title = titleOf(record);
  if (record.rows.length === 0) return nothingScene({ width, title }, "Nothing to compare.");
  const columns = columnsFor(record, unit, width);
  const axis = forestAxis(record, unit, { start: columns.left, end: columns.right });
  const entries = keyOf(record);
  const key = entries.length === 0 ? { marks: [], height: -12 } : layKey(entries, { width, y: 0 });
  const top = key.height + 12;
  const body = layRows(record, { unit, axis, columns, y: top });
  const text = { width, title, description: describe(record, unit) };
  if (record.rows.every(({ estimate }) => estimate === null)) return { ...text, height: Math.ceil(body.end), marks: body.marks };
  const foot = footMarks(record, { unit, axis, columns, y: body.end + 6 });
  const ground = columns.wide ? groundMarks(record, axis, top, body.end + 6) : groundMarks(record, axis, body.end - 2, body.end + 6);
  return { ...text, height: Math.ceil(foot.end), marks: [...key.marks, ...ground, ...body.marks, ...foot.marks] };
}

/** On a wide sheet the strip stands between labels and numbers, as wide as they leave it; on a phone it stands under them. */
function columnsFor(record: ForestRecord, unit: ShownUnit, width: number): Columns {
  const wide = isWide(width);
  if (!wide) return { wide, width, labelWidth: width, left: 16, right: width - 16 };
  const labelWidth = Math.min(270, width * 0.3);
  const numbers = Math.max(...record.rows.map((row) => textWidth(estimateOf(row, unit), 12.5)));
  return { wide, width, labelWidth, left: labelWidth + 24, right: width - numbers - 24 };
}

type View = { readonly unit: ShownUnit; readonly axis: Axis; readonly columns: Columns; readonly y: number };

function layRows(record: ForestRecord, view: View) {
  const marks: Mark[] = [];
  let cursor = view.y;
  let heading: string | undefined;
  for (const row of record.rows) {
    if (row.heading !== undefined && row.heading !== heading) {
      const head = headingRow(row.heading, cursor);
      marks.push(...head.marks);
      cursor = head.end;
    }
    heading = row.heading;
    const placed = forestRow(row, record, { ...view, y: cursor });
    // on a phone words stand between the strips: no difference is drawn through each strip alone
    if (!view.columns.wide && row.estimate !== null) marks.push(...groundMarks(record, view.axis, placed.end - 24, placed.end + 1));
    marks.push(...placed.marks);
    cursor = placed.end + 6;
  }
  return { marks, end: cursor };
}

function groundMarks(record: ForestRecord, axis: Axis, from: number, to: number): Mark[] {
  const at = axis.at(noDifference(record));
  const hairlines = axis.ticks.map(({ at: x }): Mark => ({ mark: "rule", x1: x, x2: x, y1: from, y2: to, ink: "hairline", weight: 1 }));
  return [...hairlines, { mark: "rule", x1: at, x2: at, y1: from, y2: to, ink: "ink", weight: 1 }];
}

/** The axis, and under it what its two sides mean, each on its own side of no difference. */
function footMarks(record: ForestRecord, { unit, axis, columns, y }: View) {
  const { left, right, width } = columns;
  const what = record.kind === "ratio" ? "ratio, logarithmic" : `difference${unit.name === "" ? "" : `, ${unit.name}`}`;
  const axisMarks = bottomAxis(axis, { y, left, right, title: what });
  const middle = Math.min(right - 60, Math.max(left + 60, axis.at(noDifference(record))));
  const [less, more] = record.sides;
  const from = columns.wide ? left - 16 : 0;
  const side = (text: string, x: number, room: number, anchor: "start" | "end"): Mark[] =>
    wrapText(text, 12.5, room).map((line, index) => ({
      mark: "text",
      x,
      y: y + 56 + index * 16,
      text: line,
      ink: "ink",
      size: 12.5,
      anchor,
    }));
  const words = [
    ...side(`← ${less}`, middle - 10, middle - 10 - from, "end"),
    ...side(`${more} →`, middle + 10, width - middle - 10, "start"),
  ];
  const lowest = Math.max(...words.map((mark) => (mark.mark === "text" ? mark.y : 0)));
  return { marks: [...axisMarks, ...words], end: Math.max(y + bottomAxisPx, lowest + 6) };
}

function keyOf({ rows }: ForestRecord) {
  const entries = [
    rows.some(({ tested }) => tested) && bracketEntry("estimate, 95 % CI"),
    rows.some(({ tested, estimate }) => !tested && estimate !== null) && bracketEntry("not tested", { hollow: true }),
  ];
  return entries.filter((entry) => entry !== false);
}

function describe(record: ForestRecord, unit: ShownUnit): string {
  const what = record.kind === "ratio" ? "Ratios" : "Differences";
  const sides = `below ${noDifference(record)}: ${record.sides[0]}; above: ${record.sides[1]}`;
  return `${what} with their 95 % intervals, ${counted(record.rows.length, "row")}; ${sides}. ${record.rows.map((row) => `${rowText(row, record, unit)}.`).join(" ")}`;
}
