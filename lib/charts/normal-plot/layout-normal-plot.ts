import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { once } from "../figure/once";
import { titleOf } from "../figure/title";
import { panelPlaces, rowsOf } from "../frame/panels";
import { layPlot, type Plot } from "../frame/plot";
import { layHead } from "../head/lay-head";
import { lineEntry, shapeEntry } from "../key/entries";
import { layKey } from "../key/lay-key";
import { spanOf } from "../place/span-of";
import { symbolMarks } from "../place/symbols";
import { shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import type { NormalPlotGroup, NormalPlotRecord } from "./record";
import { describe, headOf, pointText } from "./say";

const what = "Fit of the log-normal model of time";

/**
 * How well a log-normal time fits, a field a group: the residual of each healed bone against the normal quantile in its place; the line where both
 * are the same.
 * @throws RangeError when the width is below 240 px or another unit than standard deviations is asked for
 */
export function layoutNormalPlot(record: NormalPlotRecord, { width = usualWidthPx, unit }: FigureOptions = {}): Scene {
  requireWidth("layoutNormalPlot", width);
  shownUnit("standard deviations", unit);
  const title = titleOf(record, what);
  if (record.groups.length === 0) return nothingScene({ width, title });
  const drawn = record.groups.some(({ points }) => points.length > 0);
  const entries = [shapeEntry("a healed bone"), lineEntry("log-normal", { ink: "muted", dash: "short", weight: 1 })];
  const key = drawn ? layKey(entries, { width, y: 0 }) : { marks: [], height: -10 };
  const body = layPanels(record, { y: key.height + 10, width });
  return { width, title, description: describe(record), height: Math.ceil(body.end), marks: [...key.marks, ...body.marks] };
}

function layPanels(record: NormalPlotRecord, { y, width }: { readonly y: number; readonly width: number }) {
  const marks: Mark[] = [];
  let cursor = y;
  for (const row of rowsOf(record.groups, panelPlaces(record.groups.length, width))) {
    const heads = row.map(({ item, place }) => layHead(headOf(item), { x: place.x, y: cursor, width: place.width }));
    const top = cursor + Math.max(...heads.map(({ height }) => height)) + 8;
    const fields = row
      .filter(({ item }) => item.points.length > 0)
      .map(({ item, place }) => layField(record, item, plotOf(record, { left: place.x, top, width: place.width })));
    marks.push(...heads.flatMap((head) => head.marks), ...fields.flatMap((field) => field.marks));
    cursor = Math.max(top, ...fields.map(({ end }) => end)) + 22;
  }
  return { marks, end: cursor - 22 };
}

/** All fields share both axes. */
const sharedSpan = once(({ groups }: NormalPlotRecord) => {
  const points = groups.flatMap((group) => group.points);
  return spanOf([-1, 1, ...points.map(({ residual }) => residual), ...points.map(({ normal }) => normal)]) ?? [-1, 1];
});

function plotOf(record: NormalPlotRecord, place: { readonly left: number; readonly top: number; readonly width: number }): Plot {
  const [from, to] = sharedSpan(record);
  const unit = { name: "", perRecord: 1, digits: 1, valueDigits: 2 };
  return layPlot({
    ...place,
    height: isWide(place.width) ? 300 : 240,
    x: { from, to, unit, title: "normal quantile" },
    y: { from, to, unit, title: "residual, in σ of log days" },
  });
}

function layField({ groups }: NormalPlotRecord, { label, points }: NormalPlotGroup, plot: Plot) {
  const name = groups.length > 1 ? label : null;
  // one size for all fields, by the group that has the most
  const most = Math.max(...groups.map((group) => group.points.length));
  const size = most <= 100 ? 3.6 : most <= 800 ? 2.4 : 1.5;
  const [low, high] = [Math.max(plot.xAxis.from, plot.yAxis.from), Math.min(plot.xAxis.to, plot.yAxis.to)];
  const line: Mark = {
    mark: "rule",
    x1: plot.x(low),
    y1: plot.y(low),
    x2: plot.x(high),
    y2: plot.y(high),
    ink: "muted",
    weight: 1,
    dash: "short",
  };
  const marks = symbolMarks({
    shape: "disc",
    size,
    ink: "series1",
    xs: points.map((point) => plot.x(point.normal)),
    ys: points.map((point) => plot.y(point.residual)),
    labelOf: (place) => pointText(points[place] as NormalPlotGroup["points"][number], name),
  });
  return { marks: [...plot.ground, line, ...marks], end: plot.end };
}
