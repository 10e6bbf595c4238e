import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { titleOf } from "../figure/title";
import { panelPlaces, rowsOf } from "../frame/panels";
import { layPlot } from "../frame/plot";
import { layHead } from "../head/lay-head";
import { bandEntry, lineEntry, shapeEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import { spanOf } from "../place/span-of";
import { type ShownUnit, shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { identityMarks, lookOf, segmentMarks, sizeFor } from "./marks";
import type { GainPlanGroup, GainPlanRecord } from "./record";
import { describe, headOf, toleranceText } from "./say";

/** A square field no larger than this: on it the line of equal gain and plan rises at 45°. */
const largestPx = 420;
const besidePx = 40;
/** Room for the longest and for marks moved along the line. */
const headroom = 1.06;

/**
 * Length gained against length planned, a field a group: the line on which both are equal, the band of tolerance about it, each segment a
 * mark, those stopped early in a shape of their own.
 * @throws RangeError when the width is below 240 px or the unit is none of length
 */
export function layoutGainAgainstPlan(record: GainPlanRecord, { width = usualWidthPx, unit: asked }: FigureOptions = {}): Scene {
  requireWidth("layoutGainAgainstPlan", width);
  const unit = shownUnit("mm", asked);
  const title = titleOf(record, "Gain against plan");
  if (record.groups.length === 0) return nothingScene({ width, title });
  const drawn = record.groups.some(({ marks }) => marks.length > 0);
  const key = drawn ? layKey(keyOf(record, unit), { width, y: 0 }) : { marks: [], height: -10 };
  const body = layBody(record, { y: key.height + 10, width, unit });
  return { width, title, description: describe(record, unit), height: Math.ceil(body.end), marks: [...key.marks, ...body.marks] };
}

type Place = { readonly y: number; readonly width: number; readonly unit: ShownUnit };

function layBody(record: GainPlanRecord, place: Place) {
  const [only] = record.groups;
  const alone = only !== undefined && record.groups.length === 1 && only.marks.length > 0 && isWide(place.width);
  return alone ? layBeside(record, only, place) : layPanels(record, place);
}

/** One group on a wide sheet: its words stand beside its field. */
function layBeside(record: GainPlanRecord, group: GainPlanGroup, { y, width, unit }: Place) {
  const field = layField(record, group, { x: 0, y, width: largestPx, unit, most: mostIn(record) });
  const { estimate = "", lines = [], ...head } = headOf(group, record, unit);
  const words = layHead(
    { ...head, lines: [estimate, ...lines] },
    { x: largestPx + besidePx, y: y + 24, width: width - largestPx - besidePx },
  );
  return { marks: [...words.marks, ...field.marks], end: Math.max(field.end, y + 24 + words.height) };
}

function layPanels(record: GainPlanRecord, { y, width, unit }: Place) {
  const marks: Mark[] = [];
  const most = mostIn(record);
  let cursor = y;
  for (const row of rowsOf(record.groups, panelPlaces(record.groups.length, width))) {
    const heads = row.map(({ item, place }) => layHead(headOf(item, record, unit), { x: place.x, y: cursor, width: place.width }));
    const top = cursor + Math.max(...heads.map(({ height }) => height)) + 8;
    const fields = row
      .filter(({ item }) => item.marks.length > 0)
      .map(({ item, place }) => layField(record, item, { x: place.x, y: top, width: Math.min(place.width, largestPx), unit, most }));
    marks.push(...heads.flatMap((head) => head.marks), ...fields.flatMap((field) => field.marks));
    cursor = Math.max(top, ...fields.map(({ end }) => end)) + 22;
  }
  return { marks, end: cursor - 22 };
}

/** The longest length, planned or gained: both axes of all fields end there. */
function mostIn({ groups }: GainPlanRecord): number {
  const marks = groups.flatMap((group) => group.marks);
  const longest = Math.max(spanOf(marks.map(({ plannedMm }) => plannedMm))?.[1] ?? 0, spanOf(marks.map(({ gainMm }) => gainMm))?.[1] ?? 0);
  return Math.max(10, longest * headroom);
}

type FieldPlace = Place & { readonly x: number; readonly most: number };

function layField(record: GainPlanRecord, group: GainPlanGroup, { x, y, width, unit, most }: FieldPlace) {
  const plot = layPlot({
    left: x,
    top: y,
    width,
    height: width - 50,
    x: { from: 0, to: most, unit, title: `${unit.name} ${record.plan ?? "planned at start"}`, ticks: 5 },
    y: { from: 0, to: most, unit, title: `${unit.name} gained`, ticks: 5 },
  });
  const name = record.groups.length > 1 ? group.label : null;
  const size = sizeFor(Math.max(...record.groups.map(({ marks }) => marks.length)));
  return {
    marks: [...identityMarks(record, plot, unit), ...plot.ground, ...segmentMarks(group, plot, { unit, name, size })],
    end: plot.end,
  };
}

function keyOf(record: GainPlanRecord, unit: ShownUnit): KeyEntry[] {
  const held = new Set(record.groups.flatMap(({ marks }) => marks.map(({ outcome }) => outcome)));
  const shapes = (["reached", "stopped-early", "overshot"] as const)
    .filter((outcome) => held.has(outcome))
    .map((outcome) => shapeEntry(lookOf[outcome].words, lookOf[outcome]));
  return [...shapes, lineEntry("gained as planned", { weight: 1 }), bandEntry(toleranceText(record, unit))];
}
