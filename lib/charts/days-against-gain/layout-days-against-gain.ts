import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { titleOf } from "../figure/title";
import { panelPlaces, rowsOf } from "../frame/panels";
import { lineSwatch } from "../frame/swatch";
import { layHead } from "../head/lay-head";
import { layKey } from "../key/lay-key";
import { wrapText } from "../place/text-width";
import type { Mark, Scene } from "../scene";
import { seriesOf } from "../series";
import { type Extent, extentOf, layField } from "./field";
import { keyOf } from "./key";
import { equalGainMarks, type GroupLook, ghostLine, haloMarks, lineMarks, segmentMarks, sizeFor } from "./marks";
import { type DaysAgainstGainGroup, type DaysAgainstGainRecord, placed } from "./record";
import { describe, headOf } from "./say";
import { type TimeAndGain, timeAndGain } from "./units";

/** Up to three groups share a field, where lines that coincide are seen to; more have a field each, with the others' lines behind. */
const sharing = 3;

/**
 * Days to healing against length gained: each segment a mark, a straight line a group, drawn on to no gain, where the days that don't
 * depend on gain are read. The unhealed stand at their last film as upright open ticks and have no part in the lines.
 * @throws RangeError when the width is below 240 px or the unit is no unit of time
 */
export function layoutDaysAgainstGain(record: DaysAgainstGainRecord, { width = usualWidthPx, unit }: FigureOptions = {}): Scene {
  requireWidth("layoutDaysAgainstGain", width);
  const units = timeAndGain(unit);
  const title = titleOf(record, `${record.definition.title}: days against gain`);
  if (record.groups.length === 0) return nothingScene({ width, title });
  const drawn = record.groups.filter((group) => placed(group).count > 0);
  const key = drawn.length === 0 ? { marks: [], height: -10 } : layKey(keyOf(record), { width, y: 0 });
  const said = saidMarks(record.said ?? null, { y: key.height + 10, width });
  const place = { y: said.end, width, units };
  const body = drawn.length > sharing ? layPanels(record, place) : layShared(record, place);
  const marks = [...key.marks, ...said.marks, ...body.marks];
  return { width, title, description: describe(record, units), height: Math.ceil(body.end), marks };
}

function saidMarks(said: string | null, { y, width }: { y: number; width: number }): { marks: Mark[]; end: number } {
  if (said === null) return { marks: [], end: y };
  const lines = wrapText(said, 13.5, Math.min(width, 720));
  const marks = lines.map((text, line): Mark => ({ mark: "text", x: 0, y: y + 12 + line * 18, text, ink: "ink", size: 13.5 }));
  return { marks, end: y + lines.length * 18 + 10 };
}

type Place = { readonly y: number; readonly width: number; readonly units: TimeAndGain };
type Laid = { readonly marks: readonly Mark[]; readonly end: number };

function layShared(record: DaysAgainstGainRecord, { y, width, units }: Place): Laid {
  const drawn = record.groups.filter((group) => placed(group).count > 0);
  const marks: Mark[] = [];
  let cursor = y;
  for (const group of record.groups) {
    const at = drawn.indexOf(group);
    const swatch = at === -1 || drawn.length < 2 ? {} : { swatch: lineSwatch(seriesOf(at)) };
    const head = layHead({ ...headOf(group, units), ...swatch }, { x: 0, y: cursor, width });
    marks.push(...head.marks);
    cursor += head.height + 10;
  }
  if (drawn.length === 0) return { marks, end: cursor };
  const extent = extentOf(record);
  const plot = layField(record, extent, { x: 0, y: cursor + 4, width, height: isWide(width) ? 360 : 260 }, units);
  const looks = drawn.map((group, index) => lookOf(record, group, { index, groups: drawn.length, extent, units }));
  const drawnLayers = layers.flatMap((draw) => drawn.flatMap((group, index) => draw(group, plot, looks[index] as GroupLook)));
  return { marks: [...marks, ...plot.ground, ...drawnLayers], end: plot.end };
}

/** From the ground up: what is laid later is seen. */
const layers = [segmentMarks, haloMarks, lineMarks, equalGainMarks] as const;

type LookInput = Pick<GroupLook, "index" | "groups" | "extent" | "units">;

function lookOf(record: DaysAgainstGainRecord, group: DaysAgainstGainGroup, { index, ...more }: LookInput): GroupLook {
  const count = record.groups.reduce((sum, { marks }) => sum + marks.length, 0);
  return { ...more, index, series: seriesOf(index), size: sizeFor(count), name: record.groups.length > 1 ? group.label : null };
}

function layPanels(record: DaysAgainstGainRecord, { y, width, units }: Place): Laid {
  const extent = extentOf(record);
  const marks: Mark[] = [];
  let cursor = y;
  for (const row of rowsOf(record.groups, panelPlaces(record.groups.length, width))) {
    const heads = row.map(({ item, place }) => layHead(headOf(item, units), { x: place.x, y: cursor, width: place.width }));
    const top = cursor + Math.max(...heads.map(({ height }) => height)) + 8;
    const fields = row
      .filter(({ item }) => placed(item).count > 0)
      .map(({ item, place }) => layPanel(record, item, { x: place.x, y: top, width: place.width, extent, units }));
    marks.push(...heads.flatMap((head) => head.marks), ...fields.flatMap((field) => field.marks));
    cursor = Math.max(top, ...fields.map(({ end }) => end)) + 24;
  }
  return { marks, end: cursor - 24 };
}

type PanelInput = { readonly x: number; readonly y: number; readonly width: number; readonly extent: Extent; readonly units: TimeAndGain };

function layPanel(record: DaysAgainstGainRecord, group: DaysAgainstGainGroup, { extent, units, ...place }: PanelInput): Laid {
  const plot = layField(record, extent, { ...place, height: 220 }, units);
  const look = { ...lookOf(record, group, { index: 0, groups: 1, extent, units }), size: sizeFor(group.marks.length) };
  const others = record.groups.filter((other) => other !== group).flatMap((other) => ghostLine(other, plot));
  const own = layers.flatMap((draw) => draw(group, plot, look));
  return { marks: [...plot.ground, ...others, ...own], end: plot.end };
}
