import { bottomAxis, bottomAxisPx } from "../axis/bottom-axis";
import { type FigureOptions, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { titleOf } from "../figure/title";
import { layHead } from "../head/lay-head";
import { bracketEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import { countsText, totalText } from "../say/excluded";
import { counted, listed } from "../say/numbers";
import { type CountedOf, shareText } from "../say/shown-estimate";
import { shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { type Grid, gridOf } from "./grid";
import { byOrigin, type ComplicationMatrixGroup, type ComplicationMatrixRecord, type ComplicationRow, eventsIn } from "./record";
import { headRow, originRow, typeRow } from "./rows";

/**
 * Events by type and class, a matrix a group: numbers over bars as long as they are, types under their origin, and beside each type the
 * share of segments (or patients) that had it, with its interval.
 * @throws RangeError when the width is below 240 px, or when a unit is asked for, since counts have none
 */
export function layoutComplicationMatrix(record: ComplicationMatrixRecord, { width = usualWidthPx, unit }: FigureOptions = {}): Scene {
  requireWidth("layoutComplicationMatrix", width);
  shownUnit("", unit);
  const title = titleOf(record, `${record.definition.title} by type and class`);
  if (record.groups.length === 0) return nothingScene({ width, title });
  const grid = gridOf(record, width);
  const drawn = record.groups.some(({ rows }) => rows.length > 0);
  const key = drawn ? layKey(keyOf(nounOf(record)), { width, y: 0 }) : { marks: [], height: -12 };
  const marks: Mark[] = [...key.marks];
  let cursor = key.height + 12;
  for (const group of record.groups) {
    const block = layGroup(record, group, grid, cursor);
    marks.push(...block.marks);
    cursor = block.end + 24;
  }
  return { width, title, description: describe(record), height: Math.ceil(cursor - 24), marks };
}

const notLookedFor = "events not looked for";
const ofRecord = ({ of = "segment" }: ComplicationMatrixRecord): CountedOf => of;

/** `% of segments`. */
function nounOf(record: ComplicationMatrixRecord): string {
  return ofRecord(record) === "segment" ? "share of segments" : "share of patients";
}

function layGroup(record: ComplicationMatrixRecord, group: ComplicationMatrixGroup, grid: Grid, y: number) {
  const of = ofRecord(record);
  const estimate = group.any.n === 0 ? notLookedFor : `any: ${shareText(group.any)}`;
  const counts = [countsText(group, of, "looked for")];
  const head = layHead({ name: group.label, estimate, counts }, { x: 0, y, width: grid.width });
  const marks: Mark[] = [...head.marks];
  let cursor = y + head.height + 6;
  if (group.rows.length === 0) return { marks, end: cursor };
  const heads = headRow(grid, cursor);
  marks.push(...heads.marks);
  cursor = heads.end;
  const named = {
    name: record.groups.length > 1 ? group.label : null,
    classes: new Map(record.classes.map(({ id, label }) => [id, label])),
    noun: nounOf(record),
  };
  const body = layRows(byOrigin(group.rows), grid, cursor, named);
  const axis = bottomAxis(grid.axis, {
    y: body.end + 6,
    left: grid.left,
    right: grid.right,
    title: `% of ${of === "segment" ? "segments" : "patients"}`,
  });
  const lines = grid.wide ? hairlines(grid, { from: cursor, to: body.end + 6 }) : [];
  return { marks: [...marks, ...lines, ...body.marks, ...axis], end: body.end + 6 + bottomAxisPx };
}

function layRows(rows: readonly ComplicationRow[], grid: Grid, y: number, named: Parameters<typeof typeRow>[3]) {
  const marks: Mark[] = [];
  let cursor = y;
  let origin: string | null = null;
  for (const row of rows) {
    if (row.origin !== origin) {
      const head = originRow(row.origin, grid, cursor);
      marks.push(...head.marks);
      cursor = head.end;
      origin = row.origin;
    }
    const placed = typeRow(row, grid, cursor, named);
    marks.push(...placed.marks);
    cursor = placed.end;
  }
  return { marks, end: cursor };
}

function hairlines({ axis }: Grid, { from, to }: { from: number; to: number }): Mark[] {
  return axis.ticks.map(({ at }) => ({ mark: "rule", x1: at, x2: at, y1: from + 6, y2: to, ink: "hairline", weight: 1 }));
}

function keyOf(noun: string): KeyEntry[] {
  const bar: KeyEntry = {
    text: "events",
    wide: 20,
    draw: (x, y) => [{ mark: "band", x, y: y - 1.75, width: 20, height: 3.5, ink: "series1" }],
  };
  return [bar, bracketEntry(`${noun}, 95 % CI`)];
}

function describe(record: ComplicationMatrixRecord): string {
  const of = ofRecord(record);
  const groups = record.groups.map((group) => {
    const rows = byOrigin(group.rows)
      .filter((row) => eventsIn(row) > 0)
      .map((row) => rowText(row, record));
    const any = group.any.n === 0 ? notLookedFor : `any: ${shareText(group.any)}`;
    return `${group.label}: ${[any, countsText(group, of, "looked for"), ...rows].join("; ")}.`;
  });
  return `Events by type, down, and class, across (${record.scheme}). ${totalText(record.groups, of, "looked for")}. ${groups.join(" ")}`;
}

function rowText(row: ComplicationRow, { classes }: ComplicationMatrixRecord): string {
  const parts = classes.flatMap(({ id, label }) => ((row.counts[id] ?? 0) === 0 ? [] : [`${row.counts[id]} ${label}`]));
  return `${row.type} ${counted(eventsIn(row), "event")} (${listed(parts)}), ${shareText(row.share)}`;
}
