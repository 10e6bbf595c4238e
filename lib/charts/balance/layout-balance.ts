import { type Axis, axisOf } from "../axis/axis";
import { bottomAxis, bottomAxisPx } from "../axis/bottom-axis";
import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { layHead } from "../head/lay-head";
import { lineEntry, shapeEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import { shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { type BalanceRecord, isUnlike, sorted, unlikeFrom } from "./record";
import { balanceRow, type Columns, describe, groupsText, titleOfBalance } from "./rows";

/**
 * Case-mix balance: the size of each standardised difference from nothing, largest first, against the line above which groups are called
 * unlike. Beyond it a mark changes its shape.
 * @throws RangeError when the width is below 240 px, or when a unit is asked for, since there is none
 */
export function layoutBalance(record: BalanceRecord, { width = usualWidthPx, unit }: FigureOptions = {}): Scene {
  requireWidth("layoutBalance", width);
  shownUnit("", unit);
  const title = titleOfBalance(record);
  if (record.rows.length === 0) return nothingScene({ width, title }, "Nothing to compare.");
  const columns = columnsFor(width);
  const most = Math.max(0.5, ...record.rows.map(({ smd }) => Math.abs(smd ?? 0)));
  const plain = { name: "", perRecord: 1, digits: 2, valueDigits: 2 };
  const axis = axisOf({ from: 0, to: most, start: columns.left, end: columns.right, unit: plain, ticks: columns.wide ? 5 : 4 });
  const key = layKey(keyOf(record), { width, y: 0 });
  const [first, second] = record.groups;
  const head = layHead({ name: `${first.label} and ${second.label}`, counts: [groupsText(record)] }, { x: 0, y: key.height + 10, width });
  const top = key.height + 10 + head.height + 10;
  const body = layRows(record, axis, columns, top);
  const foot = bottomAxis(axis, {
    y: body.end + 4,
    left: columns.left,
    right: columns.right,
    title: "size of the standardised difference",
  });
  const ground = columns.wide ? groundMarks(axis, top, body.end + 4) : groundMarks(axis, body.end - 2, body.end + 4);
  const height = Math.ceil(body.end + 4 + bottomAxisPx);
  return { width, title, description: describe(record), height, marks: [...key.marks, ...head.marks, ...ground, ...body.marks, ...foot] };
}

function columnsFor(width: number): Columns {
  const wide = isWide(width);
  return wide
    ? { wide, width, labelWidth: 190, left: 240, right: Math.max(420, width * 0.58), valuesX: Math.max(420, width * 0.58) + 24 }
    : { wide, width, labelWidth: width - 56, left: 12, right: width - 16, valuesX: 0 };
}

function layRows(record: BalanceRecord, axis: Axis, columns: Columns, y: number) {
  const marks: Mark[] = [];
  let cursor = y;
  for (const row of sorted(record.rows)) {
    const placed = balanceRow(row, record, { axis, columns, y: cursor });
    if (!columns.wide && row.smd !== null) marks.push(...groundMarks(axis, placed.end - 18, placed.end - 2));
    marks.push(...placed.marks);
    cursor = placed.end + 4;
  }
  return { marks, end: cursor };
}

/** Hairlines, nothing at the left, and the line above which groups are called unlike. */
function groundMarks(axis: Axis, from: number, to: number): Mark[] {
  const rule = (x: number): Mark => ({ mark: "rule", x1: x, x2: x, y1: from, y2: to, ink: "hairline", weight: 1 });
  const at = axis.at(unlikeFrom);
  return [
    ...axis.ticks.map((tick) => rule(tick.at)),
    { mark: "rule", x1: at, x2: at, y1: from, y2: to, ink: "ink", weight: 1.3, dash: "long" },
  ];
}

function keyOf({ rows }: BalanceRecord): KeyEntry[] {
  const entries = [
    rows.some((row) => row.smd !== null && !isUnlike(row)) && shapeEntry(`up to ${unlikeFrom}`),
    rows.some(isUnlike) && shapeEntry(`above ${unlikeFrom}: unlike`, { shape: "square", ink: "series2" }),
    lineEntry(`${unlikeFrom}`, { dash: "long", weight: 1.3 }),
  ];
  return entries.filter((entry) => entry !== false);
}
