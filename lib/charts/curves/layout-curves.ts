import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { titleOf } from "../figure/title";
import { panelPlaces, rowsOf } from "../frame/panels";
import { layPlot, type Plot } from "../frame/plot";
import { lineSwatch } from "../frame/swatch";
import { layHead } from "../head/lay-head";
import { bandEntry, tickEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import { spanOf } from "../place/span-of";
import { type ShownUnit, shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { groupsPerFrame, seriesOf } from "../series";
import { atRiskMarks } from "./at-risk";
import type { CurveKind } from "./kind";
import { bandMarks, beadMarks, type CurveLook, curveMarks } from "./marks";
import { type CurveGroup, type CurveRecord, lastDay, shownPoints } from "./record";
import { describe, headOf } from "./say";

/**
 * Shares with an event over time, stepped, with the band of their limits, ticks where someone was followed no further, and the numbers at
 * risk below; cut where fewer than five are at risk. Up to five groups share a field; more have one each.
 */
export function layoutCurves(kind: CurveKind, record: CurveRecord, { width = usualWidthPx, unit: asked }: FigureOptions = {}): Scene {
  requireWidth(kind.layout, width);
  const unit = shownUnit("days", asked);
  const title = titleOf(record, `${record.definition.title}: ${kind.title}`);
  if (record.groups.length === 0) return nothingScene({ width, title });
  const drawn = drawnIn(record);
  const key = drawn.length === 0 ? { marks: [], height: -10 } : layKey(keyOf(record), { width, y: 0 });
  const view: View = { record, kind, unit, width, extent: extentOf(record, kind) };
  const body = drawn.length > groupsPerFrame ? layPanels(view, key.height + 10) : layShared(view, key.height + 10);
  const days = drawn.length === 0 ? [] : daysTold(view);
  return {
    width,
    title,
    description: describe(record, kind, unit, days),
    height: Math.ceil(body.end),
    marks: [...key.marks, ...body.marks],
  };
}

type Extent = { readonly days: number; readonly share: number };
type View = {
  readonly record: CurveRecord;
  readonly kind: CurveKind;
  readonly unit: ShownUnit;
  readonly width: number;
  readonly extent: Extent;
};
type Laid = { readonly marks: readonly Mark[]; readonly end: number };

const drawnIn = ({ groups }: CurveRecord) => groups.filter((group) => shownPoints(group).length > 0);

/** All fields of a figure have the same ends, so that they can be compared. */
function extentOf({ groups }: CurveRecord, { whole }: CurveKind): Extent {
  const shares = groups.flatMap((group) => shownPoints(group).map(({ estimate, upper }) => upper ?? estimate));
  return { days: Math.max(30, lastDay(groups)), share: whole ? 1 : Math.min(1, Math.max(0.1, spanOf(shares)?.[1] ?? 0)) };
}

function layShared(view: View, y: number): Laid {
  const { record, unit, kind, width } = view;
  const drawn = drawnIn(record);
  const marks: Mark[] = [];
  let cursor = y;
  for (const group of record.groups) {
    const at = drawn.indexOf(group);
    const swatch = at === -1 || record.groups.length < 2 ? {} : { swatch: lineSwatch(seriesOf(at)) };
    const head = layHead({ ...headOf(group, record, kind, unit), ...swatch }, { x: 0, y: cursor, width });
    marks.push(...head.marks);
    cursor += head.height + 10;
  }
  if (drawn.length === 0) return { marks, end: cursor };
  const field = layField(view, drawn, { x: 0, y: cursor + 4, width, height: isWide(width) ? 320 : 230 });
  return { marks: [...marks, ...field.marks], end: field.end };
}

type FieldPlace = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** A field with its curves and its numbers at risk. */
function layField(view: View, groups: readonly CurveGroup[], place: FieldPlace): Laid {
  const plot = plotOf(view, place);
  const looks = groups.map((group, index) => lookOf(view, group, { index, groups: groups.length }));
  const layers = [bandMarks, curveMarks, beadMarks].flatMap((draw) =>
    groups.flatMap((group, index) => draw(group, plot, looks[index] as CurveLook)),
  );
  const rows = groups.map((group, index) => ({ group, series: groups.length > 1 ? seriesOf(index) : null }));
  const atRisk = atRiskMarks(rows, plot, { x: place.x, y: plot.end - 2 });
  return { marks: [...plot.ground, ...layers, ...atRisk.marks], end: atRisk.end };
}

function plotOf({ record, kind, unit, extent }: View, { x, y, width, height }: FieldPlace): Plot {
  const clock = record.clock ?? "from surgery";
  return layPlot({
    left: x,
    top: y,
    width,
    height,
    x: { from: 0, to: extent.days, unit, nice: false, title: `${unit.name} ${clock}` },
    y: { from: 0, to: extent.share, unit: shareUnit, percent: true, title: kind.share, ticks: 4 },
  });
}

const shareUnit: ShownUnit = { name: "", perRecord: 1, digits: 2, valueDigits: 2 };

function lookOf({ record, kind, unit }: View, group: CurveGroup, { index, groups }: { index: number; groups: number }): CurveLook {
  const name = record.groups.length > 1 ? group.label : null;
  return { series: seriesOf(index), kind, unit, name, bandOpacity: groups > 2 ? 0.1 : 0.16 };
}

function layPanels(view: View, y: number): Laid {
  const { record, kind, unit, width } = view;
  const marks: Mark[] = [];
  let cursor = y;
  for (const row of rowsOf(record.groups, panelPlaces(record.groups.length, width))) {
    const heads = row.map(({ item, place }) => layHead(headOf(item, record, kind, unit), { x: place.x, y: cursor, width: place.width }));
    const top = cursor + Math.max(...heads.map(({ height }) => height)) + 8;
    const fields = row
      .filter(({ item }) => shownPoints(item).length > 0)
      .map(({ item, place }) => layField(view, [item], { x: place.x, y: top, width: place.width, height: 170 }));
    marks.push(...heads.flatMap((head) => head.marks), ...fields.flatMap((field) => field.marks));
    cursor = Math.max(top, ...fields.map(({ end }) => end)) + 22;
  }
  return { marks, end: cursor - 22 };
}

/** The days at which the description tells the shares: those of the axis. */
function daysTold(view: View): readonly number[] {
  return plotOf(view, { x: 0, y: 0, width: view.width, height: 200 }).xAxis.ticks.map(({ value }) => value);
}

function keyOf(record: CurveRecord): KeyEntry[] {
  const points = drawnIn(record).flatMap((group) => shownPoints(group));
  const entries = [
    points.some(({ lower, upper }) => lower !== null && upper !== null) && bandEntry("95 % CI", { ink: "series1", opacity: 0.2 }),
    points.some(({ censored = 0 }) => censored > 0) && tickEntry("followed no further"),
  ];
  return entries.filter((entry) => entry !== false);
}
