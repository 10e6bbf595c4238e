import type { Plot } from "../frame/plot";
import { counted } from "../say/numbers";
import { type ShownUnit, valueText } from "../say/shown-unit";
import type { Mark } from "../scene";
import type { Series } from "../series";
import type { CurveKind } from "./kind";
import { atRiskOn, type CurveGroup, type CurvePointForFigure, shareBy, shownPoints } from "./record";
import { pointText } from "./say";

export type CurveLook = {
  readonly series: Series;
  readonly kind: CurveKind;
  readonly unit: ShownUnit;
  /** Said before every mark where there are several groups. */
  readonly name: string | null;
  readonly bandOpacity: number;
};

/** The band of limits: a light ground with thin edges, so that it is seen without colour. */
export function bandMarks(group: CurveGroup, plot: Plot, { series, bandOpacity }: CurveLook): Mark[] {
  const points = shownPoints(group).filter(hasLimits);
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || first === last) return [];
  const upper = steps(points, ({ upper: limit }) => limit, plot);
  const lower = steps(points, ({ lower: limit }) => limit, plot);
  const back = [...lower].reverse();
  const d = `M${join(upper)}L${join(back)}Z`;
  const edge = (corners: readonly string[]): Mark => ({
    mark: "path",
    d: `M${join(corners)}`,
    ink: series.ink,
    weight: 0.8,
    opacity: 0.55,
  });
  return [{ mark: "path", d, ink: series.ink, fill: true, opacity: bandOpacity }, edge(upper), edge(lower)];
}

type Limited = CurvePointForFigure & { readonly lower: number; readonly upper: number };

function hasLimits(point: CurvePointForFigure): point is Limited {
  return point.lower !== null && point.upper !== null;
}

const join = (corners: readonly string[]) => corners.join("L");

/** The corners of a stepped line. */
function steps<P extends CurvePointForFigure>(points: readonly P[], pick: (point: P) => number, plot: Plot): string[] {
  return points.flatMap((point, index) => {
    const here = `${plot.x(point.day)} ${plot.y(pick(point))}`;
    const before = points[index - 1];
    return before === undefined ? [here] : [`${plot.x(point.day)} ${plot.y(pick(before))}`, here];
  });
}

/** The curve from nothing at day 0, and a short upright tick wherever someone was followed to that day without the event. */
export function curveMarks(group: CurveGroup, plot: Plot, look: CurveLook): Mark[] {
  const points = shownPoints(group);
  if (points.length === 0) return [];
  const { ink, dash } = look.series;
  const start: CurvePointForFigure = { day: 0, atRisk: group.n, estimate: 0, lower: null, upper: null };
  const corners = steps([start, ...points], ({ estimate }) => estimate, plot);
  const ticks = points.filter(({ censored = 0 }) => censored > 0);
  const weight = ticks.length > 120 ? 0.7 : 1.3;
  return [{ mark: "path", d: `M${join(corners)}`, ink, weight: 2, dash }, ...ticks.map((point) => censorTick(point, plot, look, weight))];
}

function censorTick(
  { day, estimate, censored = 0 }: CurvePointForFigure,
  plot: Plot,
  { series, unit, name }: CurveLook,
  weight: number,
): Mark {
  const [x, y] = [plot.x(day), plot.y(estimate)];
  const label = `${name === null ? "" : `${name}: `}${counted(censored, "segment")} followed to ${valueText(day, unit)} and no further`;
  return { mark: "rule", x1: x, x2: x, y1: y - 4.5, y2: y + 4.5, ink: series.ink, weight, label };
}

/** The group's shape on its curve at each number of the axis: what it shows by then can be heard and pointed at. */
export function beadMarks(group: CurveGroup, plot: Plot, { series, kind, unit, name }: CurveLook): Mark[] {
  return plot.xAxis.ticks.flatMap(({ value: day }): Mark[] => {
    const point = day <= 0 ? null : shareBy(group, day);
    if (point === null) return [];
    const label = `${name === null ? "" : `${name}: `}${pointText(point, kind, unit, day)}; ${atRiskOn(group, day)} at risk`;
    return [{ mark: "symbol", shape: series.shape, x: plot.x(day), y: plot.y(point.estimate), size: 4, ink: series.ink, label }];
  });
}
