import { type Axis, type AxisInput, axisOf } from "../axis/axis";
import { bottomAxis, bottomAxisPx } from "../axis/bottom-axis";
import { leftAxis, leftAxisPx } from "../axis/left-axis";
import { wrapText } from "../place/text-width";
import type { Mark } from "../scene";

type AxisWish = Pick<AxisInput, "from" | "to" | "unit" | "percent" | "nice" | "ticks"> & { readonly title: string };

export type PlotInput = {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  /** Of the field alone, without titles and numbers. */
  readonly height: number;
  readonly x: AxisWish;
  readonly y: AxisWish;
  /** Room over the field for what lies beyond the axis. */
  readonly gutter?: number;
  /** Least room for the numbers at the left, so that fields over each other stand in line. */
  readonly leftPx?: number;
};

/** A field with an axis under it and one at its left. `end`: where the next thing may begin. */
export type Plot = {
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  readonly xAxis: Axis;
  readonly yAxis: Axis;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly ground: readonly Mark[];
  readonly end: number;
};

/** Height of an axis that has no title, since the field below bears it. */
const untitledPx = 28;
const titleSize = 12.5;
const titleLinePx = 17;
/** Half the last number of the axis stands out at the right. */
const outstandingPx = 14;

/** Lays a field: the title of the axis that stands up lies over it, since a reader doesn't turn the head. */
export function layPlot({ left: outerLeft, top: outerTop, width, height, x, y, gutter = 0, leftPx = 0 }: PlotInput): Plot {
  const titles = wrapText(y.title, titleSize, width);
  const top = outerTop + titles.length * titleLinePx + 8 + gutter;
  const bottom = top + height;
  const yAxis = axisOf({ ...y, start: bottom, end: top, ticks: y.ticks ?? Math.max(3, Math.round(height / 60)) });
  const left = outerLeft + Math.max(leftPx, leftAxisPx(yAxis));
  const right = outerLeft + width - outstandingPx;
  const xAxis = axisOf({ ...x, start: left, end: right, ticks: x.ticks ?? Math.max(3, Math.round((right - left) / 80)) });
  const title = titles.map(
    (text, line): Mark => ({ mark: "text", x: outerLeft, y: outerTop + 12 + line * titleLinePx, text, ink: "muted", size: titleSize }),
  );
  const over: Mark[] = gutter > 0 ? [{ mark: "text", x: left - 8, y: top - 8, text: "↑", ink: "ink", size: 13, anchor: "end" }] : [];
  const ground = [...title, ...over, ...leftAxis(yAxis, { left, right }), ...bottomAxis(xAxis, { y: bottom, left, right, title: x.title })];
  return {
    x: xAxis.at,
    y: yAxis.at,
    xAxis,
    yAxis,
    left,
    right,
    top,
    bottom,
    ground,
    end: bottom + (x.title === "" ? untitledPx : bottomAxisPx),
  };
}
