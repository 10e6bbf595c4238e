import { type Axis, axisOf } from "../axis/axis";
import { bottomAxis, bottomAxisPx } from "../axis/bottom-axis";
import { leftAxis, leftAxisPx } from "../axis/left-axis";
import { lineEntry, shapeEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import { counted, decimals } from "../say/numbers";
import { shownUnit } from "../say/shown-unit";
import type { Mark, Scene } from "../scene";
import type { CourseForFigure } from "./record";
import { dayText } from "./words";

const plotPx = 190;
const right = 14;
const days = shownUnit("days");
const mm = shownUnit("mm");

/**
 * The length distracted at each visit beside the line as prescribed, over days from surgery. Lengths on film are discs on a line; counts of
 * the dial are hollow, since they are not lengths.
 * `width` px.
 * @throws RangeError when there is neither a length nor a prescription to draw
 */
export function layoutCourse(record: CourseForFigure, { width = 880 }: { readonly width?: number } = {}): Scene {
  if (!(width >= 240)) throw new RangeError(`layoutCourse requires a width of at least 240 px, received ${width}`);
  if (!hasCourse(record)) throw new RangeError("layoutCourse requires a length or a prescribed line, received neither");
  const key = layKey(entriesOf(record), { width, y: 0 });
  const top = key.height + 30;
  const upright = axisOf({ from: 0, to: mostMm(record), start: top + plotPx, end: top, unit: mm, ticks: 5 });
  const left = leftAxisPx(upright);
  const [first, last] = daysOf(record);
  const axis = axisOf({ from: first, to: last, start: left, end: width - right, unit: days, ticks: width < 420 ? 4 : 8 });
  const place = { left, right: width - right };
  return {
    width,
    height: Math.ceil(top + plotPx + bottomAxisPx),
    title: `Course of distraction of the ${record.title}`,
    description: descriptionOf(record),
    marks: [
      ...key.marks,
      { mark: "text", x: 0, y: top - 12, text: "mm", ink: "muted", size: 12.5 },
      ...leftAxis(upright, place),
      ...planMarks(record, upright, place),
      ...prescribedMarks(record, axis, upright),
      ...pointMarks(record, axis, upright),
      ...gainedMarks(record, axis, upright),
      ...bottomAxis(axis, { y: top + plotPx, ...place, title: "days from surgery" }),
    ],
  };
}

/** Whether there is a course to draw. */
export function hasCourse({ points, prescribed }: CourseForFigure): boolean {
  return points.length > 0 || prescribed !== null;
}

function entriesOf({ points, prescribed, plannedMm, gained }: CourseForFigure): readonly KeyEntry[] {
  return [
    points.some(({ by }) => by !== "dial") && shapeEntry("length at a visit"),
    points.some(({ by }) => by === "dial") && shapeEntry("count of the dial", { hollow: true }),
    prescribed !== null && lineEntry("as prescribed", { dash: "long", ink: "muted" }),
    plannedMm !== null && lineEntry("planned gain", { dash: "dot" }),
    gained !== null && shapeEntry("gain at the end of distraction", { shape: "square", ink: "ink" }),
  ].filter((entry) => entry !== false);
}

function mostMm({ points, prescribed, plannedMm, gained }: CourseForFigure): number {
  return Math.max(10, ...points.map((point) => point.mm), ...(prescribed ?? []).map((point) => point.mm), plannedMm ?? 0, gained?.mm ?? 0);
}

function daysOf({ points, prescribed, gained }: CourseForFigure): readonly [number, number] {
  const known = [...points, ...(prescribed ?? []), ...(gained ? [gained] : [])].map(({ day }) => day);
  return [Math.min(0, ...known), Math.max(10, ...known)];
}

function planMarks({ plannedMm }: CourseForFigure, upright: Axis, place: { left: number; right: number }): Mark[] {
  if (plannedMm === null) return [];
  const y = upright.at(plannedMm);
  return [
    {
      mark: "rule",
      x1: place.left,
      x2: place.right,
      y1: y,
      y2: y,
      ink: "ink",
      weight: 1.5,
      dash: "dot",
      label: `planned gain ${decimals(plannedMm, 0)} mm`,
    },
  ];
}

function prescribedMarks({ prescribed }: CourseForFigure, axis: Axis, upright: Axis): Mark[] {
  if (prescribed === null) return [];
  const d = `M${prescribed.map(({ day, mm: length }) => `${axis.at(day)} ${upright.at(length)}`).join("L")}`;
  return [{ mark: "path", d, ink: "muted", weight: 1.5, dash: "long" }];
}

function pointMarks({ points }: CourseForFigure, axis: Axis, upright: Axis): Mark[] {
  const films = points.filter(({ by }) => by !== "dial");
  const at = (point: { day: number; mm: number }) => `${axis.at(point.day)} ${upright.at(point.mm)}`;
  const line: Mark[] = films.length > 1 ? [{ mark: "path", d: `M${films.map(at).join("L")}`, ink: "series1", weight: 1.5 }] : [];
  const marks = points.map((point): Mark => {
    const dial = point.by === "dial";
    const label = `${dayText(point.day)}: ${decimals(point.mm, 1)} mm${point.by === null ? "" : dial ? " by the dial" : " on film"}`;
    const place = { x: axis.at(point.day), y: upright.at(point.mm), size: 3.8, label };
    return { mark: "symbol", shape: "disc", ink: "series1", ...place, ...(dial ? { hollow: true } : {}) };
  });
  return [...line, ...marks];
}

function gainedMarks({ gained }: CourseForFigure, axis: Axis, upright: Axis): Mark[] {
  if (gained === null) return [];
  const label = `${dayText(gained.day)}: gain ${decimals(gained.mm, 1)} mm`;
  return [{ mark: "symbol", shape: "square", x: axis.at(gained.day), y: upright.at(gained.mm), size: 4.2, ink: "ink", label }];
}

function descriptionOf({ points, prescribed, plannedMm, gained }: CourseForFigure): string {
  return [
    points.length === 0 ? "No length was recorded at a visit" : `${counted(points.length, "length")} recorded at visits`,
    prescribed === null ? "no rate was prescribed" : "the line as prescribed beside them",
    plannedMm === null ? "no gain was planned" : `planned gain ${decimals(plannedMm, 0)} mm`,
    gained === null ? "no gain recorded at the end" : `gain ${decimals(gained.mm, 1)} mm at ${dayText(gained.day)}`,
  ]
    .join("; ")
    .concat(".");
}
