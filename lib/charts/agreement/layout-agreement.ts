import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { once } from "../figure/once";
import { titleOf } from "../figure/title";
import { panelPlaces, rowsOf } from "../frame/panels";
import { layPlot, type Plot } from "../frame/plot";
import { layHead } from "../head/lay-head";
import { bandEntry, lineEntry, shapeEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import { spanOf } from "../place/span-of";
import { type ShownUnit, shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { levelMarks, segmentMarks } from "./marks";
import type { AgreementGroup, AgreementRecord } from "./record";
import { describe, differenceText, headOf } from "./say";

/**
 * How far two readings agree, a field a group: each segment a mark of its difference against the mean of both, the bias and the limits within
 * which 95 of a hundred differences lie, each with the band of its interval.
 * @throws RangeError when the width is below 240 px or the unit is none of the readings'
 */
export function layoutAgreement(record: AgreementRecord, { width = usualWidthPx, unit: asked }: FigureOptions = {}): Scene {
  requireWidth("layoutAgreement", width);
  const unit = shownUnit(record.unit, asked);
  const title = titleOf(record, `Limits of agreement: ${differenceText(record)}`);
  if (record.groups.length === 0) return nothingScene({ width, title });
  const drawn = record.groups.some(({ marks }) => marks.length > 0);
  const key = drawn ? layKey(keyOf(record), { width, y: 0 }) : { marks: [], height: -10 };
  const body = layPanels(record, { y: key.height + 10, width, unit });
  return { width, title, description: describe(record, unit), height: Math.ceil(body.end), marks: [...key.marks, ...body.marks] };
}

type Place = { readonly y: number; readonly width: number; readonly unit: ShownUnit };

function layPanels(record: AgreementRecord, { y, width, unit }: Place) {
  const marks: Mark[] = [];
  let cursor = y;
  for (const row of rowsOf(record.groups, panelPlaces(record.groups.length, width))) {
    const heads = row.map(({ item, place }) => layHead(headOf(item, unit), { x: place.x, y: cursor, width: place.width }));
    const top = cursor + Math.max(...heads.map(({ height }) => height)) + 8;
    const fields = row
      .filter(({ item }) => item.marks.length > 0)
      .map(({ item, place }) => layField(record, item, { x: place.x, y: top, width: place.width, unit }));
    marks.push(...heads.flatMap((head) => head.marks), ...fields.flatMap((field) => field.marks));
    cursor = Math.max(top, ...fields.map(({ end }) => end)) + 22;
  }
  return { marks, end: cursor - 22 };
}

/** Room at the right for the numbers of bias and limits. */
const levelsPx = 46;

function layField(record: AgreementRecord, group: AgreementGroup, { x, y, width, unit }: Place & { x: number }) {
  const plot = plotOf(record, { x, y, width: width - levelsPx, unit });
  const name = record.groups.length > 1 ? group.label : null;
  const levels = levelMarks(group, plot, { unit, name });
  return {
    marks: [...levels.behind, ...plot.ground, ...segmentMarks(record, group, plot, { unit, name }), ...levels.front],
    end: plot.end,
  };
}

/** All fields share both axes, so that groups can be compared; what is nothing is always on the axis of differences. */
const spansOf = once((record: AgreementRecord) => {
  const marks = record.groups.flatMap((group) => group.marks);
  const means = spanOf(marks.map(({ first, second }) => (first + second) / 2)) ?? [0, 1];
  const levels = record.groups.flatMap(({ limits, bias }) => [bias, limits?.lower, limits?.upper].flatMap((at) => [at?.lower, at?.upper]));
  const differences = spanOf([
    0,
    ...marks.map(({ first, second }) => first - second),
    ...levels.filter((level) => typeof level === "number"),
  ]);
  return { means, differences: differences ?? [0, 1] };
});

function plotOf(record: AgreementRecord, { x, y, width, unit }: Place & { x: number }): Plot {
  const { means, differences } = spansOf(record);
  const [from, to] = differences;
  const axes = { x: `${unit.name}, mean of both`, y: `${unit.name}, ${differenceText(record)}` };
  return layPlot({
    left: x,
    top: y,
    width,
    height: isWide(width) ? 300 : 240,
    x: { from: means[0], to: means[1], unit, title: axes.x },
    y: { from, to, unit, title: axes.y },
  });
}

function keyOf({ groups }: AgreementRecord): KeyEntry[] {
  const estimated = groups.some(({ bias }) => bias.lower !== null);
  const entries = [
    shapeEntry("a segment"),
    estimated && lineEntry("bias"),
    estimated && bandEntry(groups.some(({ limits }) => limits !== null) ? "95 % CI of bias and limits" : "95 % CI of the bias"),
    groups.some(({ limits }) => limits !== null) && lineEntry("limits of agreement", { dash: "long" }),
    lineEntry("no difference", { ink: "muted", dash: "short", weight: 1 }),
  ];
  return entries.filter((entry) => entry !== false);
}
