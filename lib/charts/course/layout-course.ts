import { type FigureOptions, isWide, requireWidth, usualWidthPx } from "../figure/figure";
import { nothingScene } from "../figure/nothing";
import { titleOf } from "../figure/title";
import { panelPlaces, rowsOf } from "../frame/panels";
import { layPlot } from "../frame/plot";
import { layHead } from "../head/lay-head";
import { bandEntry, lineEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import { spanOf } from "../place/span-of";
import { type ShownUnit, shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import { courseMarks, lagMarks, prescriptionMarks } from "./marks";
import { type CourseGroup, type CourseRecord, lagsOf, ratesOf } from "./record";
import { describe, headOf } from "./say";

/**
 * The course of distraction against prescription: above, length distracted by day, a line a segment, over what was prescribed; below, each
 * segment ahead of or behind its own prescription, with median and quartiles of the group.
 * @throws RangeError when the width is below 240 px or the unit is none of length
 */
export function layoutCourse(record: CourseRecord, { width = usualWidthPx, unit: asked }: FigureOptions = {}): Scene {
  requireWidth("layoutCourse", width);
  const unit = shownUnit("mm", asked);
  const title = titleOf(record, "Course of distraction against prescription");
  if (record.groups.length === 0) return nothingScene({ width, title });
  const drawn = record.groups.some(({ courses }) => courses.length > 0);
  const key = drawn ? layKey(keyOf(record), { width, y: 0 }) : { marks: [], height: -10 };
  const body = layPanels(record, { y: key.height + 10, width, unit });
  return { width, title, description: describe(record, unit), height: Math.ceil(body.end), marks: [...key.marks, ...body.marks] };
}

type Place = { readonly y: number; readonly width: number; readonly unit: ShownUnit };
type Extent = { readonly days: number; readonly mm: number; readonly behind: number; readonly ahead: number };

function layPanels(record: CourseRecord, { y, width, unit }: Place) {
  const marks: Mark[] = [];
  const extent = extentOf(record);
  let cursor = y;
  for (const row of rowsOf(record.groups, panelPlaces(record.groups.length, width))) {
    const heads = row.map(({ item, place }) => layHead(headOf(item), { x: place.x, y: cursor, width: place.width }));
    const top = cursor + Math.max(...heads.map(({ height }) => height)) + 8;
    const fields = row
      .filter(({ item }) => item.courses.length > 0)
      .map(({ item, place }) => layFields(record, item, { x: place.x, y: top, width: place.width, unit, extent }));
    marks.push(...heads.flatMap((head) => head.marks), ...fields.flatMap((field) => field.marks));
    cursor = Math.max(top, ...fields.map(({ end }) => end)) + 22;
  }
  return { marks, end: cursor - 22 };
}

/** All fields share their ends, so that groups can be compared. */
function extentOf({ groups }: CourseRecord): Extent {
  const courses = groups.flatMap((group) => group.courses);
  const visits = courses.flatMap((course) => course.visits);
  const lags = groups.flatMap(({ lag = [] }) => lag.flatMap(({ lower, upper }) => [lower, upper]));
  const [behind, ahead] = spanOf([0, ...lags, ...courses.flatMap((course) => lagsOf(course).map(({ aheadMm }) => aheadMm))]) ?? [0, 0];
  return {
    days: spanOf(visits.map(({ day }) => day))?.[1] ?? 1,
    mm: Math.max(5, spanOf(visits.map(({ distractedMm }) => distractedMm))?.[1] ?? 0),
    behind: Math.min(-2, behind),
    ahead: Math.max(2, ahead),
  };
}

type FieldsPlace = Place & { readonly x: number; readonly extent: Extent };

function layFields(record: CourseRecord, group: CourseGroup, { x, y, width, unit, extent }: FieldsPlace) {
  const look = { unit, name: record.groups.length > 1 ? group.label : null };
  const days = { from: 0, to: extent.days, unit: shownUnit("days") };
  const against = ratesOf(group) !== null;
  const title = "days from the start of distraction";
  const place = (leftPx: number) => {
    const upper = layPlot({
      left: x,
      top: y,
      width,
      height: isWide(width) ? 260 : 200,
      leftPx,
      x: { ...days, title: against ? "" : title },
      y: { from: 0, to: extent.mm, unit, title: `${unit.name} distracted` },
    });
    const lower = layPlot({
      left: x,
      top: upper.end + 6,
      width,
      height: isWide(width) ? 150 : 130,
      leftPx,
      x: { ...days, title },
      y: { from: extent.behind, to: extent.ahead, unit, title: `${unit.name} ahead of prescription (below 0: behind)` },
    });
    return { upper, lower };
  };
  const first = place(0);
  // both fields on one line of days
  const { upper, lower } = place(Math.max(first.upper.left, against ? first.lower.left : 0) - x);
  const prescription = prescriptionMarks(group, upper);
  const course = [...prescription.behind, ...upper.ground, ...courseMarks(group, upper, look), ...prescription.front];
  if (!against) return { marks: course, end: upper.end };
  return { marks: [...course, ...lower.ground, ...lagMarks(group, lower, look)], end: lower.end };
}

function keyOf({ groups }: CourseRecord): KeyEntry[] {
  const rates = groups.map(ratesOf);
  const entries = [
    groups.some((group) => ratesOf(group) !== null) && lineEntry("a segment", { ink: "series1", weight: 1.1 }),
    groups.some(({ courses }) => courses.some(({ rateMmPerDay }) => rateMmPerDay === null)) &&
      lineEntry("a segment, no rate recorded", { ink: "muted", weight: 1.1, dash: "dot" }),
    rates.some((pair) => pair !== null) && lineEntry("prescribed", { dash: "long" }),
    rates.some((pair) => pair !== null && pair[0] < pair[1]) && bandEntry("slowest to fastest prescribed"),
    groups.some(({ lag = [] }) => lag.length > 0) && medianEntry,
  ];
  return entries.filter((entry) => entry !== false);
}

const medianEntry: KeyEntry = {
  text: "median, quartiles",
  wide: 8,
  draw: (x, y) => [
    { mark: "rule", x1: x + 4, x2: x + 4, y1: y - 8, y2: y + 8, ink: "ink", weight: 1.5 },
    { mark: "symbol", shape: "diamond", x: x + 4, y, size: 4, ink: "ink" },
  ],
};
