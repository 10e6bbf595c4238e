import type { Plot } from "../frame/plot";
import { swarm } from "../place/swarm";
import { type Look, symbolMarksByLook } from "../place/symbols";
import type { ShownUnit } from "../say/shown-unit";
import type { Ink, Mark, Shape } from "../scene";
import type { GainPlanGroup, GainPlanMark, GainPlanRecord } from "./record";
import { markText, toleranceText } from "./say";

/** Early stops are marked apart by shape first. */
export const lookOf: Readonly<Record<GainPlanMark["outcome"], { readonly shape: Shape; readonly ink: Ink; readonly words: string }>> = {
  reached: { shape: "disc", ink: "series1", words: "reached or completed" },
  "stopped-early": { shape: "triangle", ink: "series2", words: "stopped early" },
  overshot: { shape: "square", ink: "series3", words: "overshot" },
};

/** The band of tolerance about the line on which gain and plan are equal, then the line. */
export function identityMarks(record: GainPlanRecord, plot: Plot, unit: ShownUnit): Mark[] {
  const { tolerance } = record;
  const most = plot.xAxis.to;
  const off = (mm: number) => (tolerance.within === "mm" ? tolerance.limit : (mm * tolerance.limit) / 100);
  const upper = cutAtTop([0, off(0)], [most, most + off(most)], most);
  const lower = cutAtFoot([0, -off(0)], [most, most - off(most)]);
  const corners = [...upper, [most, most], ...[...lower].reverse(), [0, 0]] as const;
  const d = `M${corners.map(([planned = 0, gain = 0]) => `${plot.x(planned)} ${plot.y(gain)}`).join("L")}Z`;
  const line = `M${plot.x(0)} ${plot.y(0)}L${plot.x(most)} ${plot.y(most)}`;
  return [
    { mark: "path", d, ink: "deep", fill: true, opacity: 0.14, label: toleranceText(record, unit) },
    { mark: "path", d: line, ink: "ink", weight: 1 },
  ];
}

type Point = readonly [planned: number, gain: number];

/** The upper edge as far as the field goes. */
function cutAtTop([x1, y1]: Point, [x2, y2]: Point, top: number): Point[] {
  if (y2 <= top)
    return [
      [x1, y1],
      [x2, y2],
    ];
  const x = x1 + ((x2 - x1) * (top - y1)) / (y2 - y1);
  return [
    [x1, y1],
    [x, top],
  ];
}

/** The lower edge from where the field begins. */
function cutAtFoot([x1, y1]: Point, [x2, y2]: Point): Point[] {
  if (y1 >= 0)
    return [
      [x1, y1],
      [x2, y2],
    ];
  const x = x1 + ((x2 - x1) * (0 - y1)) / (y2 - y1);
  return [
    [x, 0],
    [x2, y2],
  ];
}

/** One size for all fields: by the group that has the most. */
export function sizeFor(count: number): number {
  return count <= 60 ? 4 : count <= 200 ? 3.2 : count <= 800 ? 2.2 : 1.5;
}

export type MarkLook = { readonly unit: ShownUnit; readonly name: string | null; readonly size: number };

/**
 * Each segment a mark. Plans are round numbers, so that marks would lie on each other: they are moved along the slanted line, which keeps
 * their distance from it, and so the error, true.
 */
export function segmentMarks({ marks }: GainPlanGroup, plot: Plot, { unit, name, size }: MarkLook): Mark[] {
  const spots = marks.map(({ plannedMm, gainMm }) => ({ x: plot.x(plannedMm), y: plot.y(gainMm) }));
  const slope = (plot.bottom - plot.top) / (plot.right - plot.left);
  const moved = swarm(spots, { radius: size, reach: (plot.right - plot.left) / 18, slope, field: plot });
  const places = marks.map((_, place) => place);
  // early stops over the rest
  const order = [
    ...places.filter((place) => marks[place]?.outcome === "reached"),
    ...places.filter((place) => marks[place]?.outcome !== "reached"),
  ];
  const looks = sized(size);
  return symbolMarksByLook({
    xs: order.map((place) => moved[place]?.x ?? 0),
    ys: order.map((place) => moved[place]?.y ?? 0),
    lookOf: (nth) => looks[(marks[order[nth] as number] as GainPlanMark).outcome],
    labelOf: (nth) => markText(marks[order[nth] as number] as GainPlanMark, unit, name),
  });
}

function sized(size: number): Readonly<Record<GainPlanMark["outcome"], Look>> {
  const look = ({ shape, ink }: (typeof lookOf)[GainPlanMark["outcome"]]) => ({ shape, ink, size });
  return { reached: look(lookOf.reached), "stopped-early": look(lookOf["stopped-early"]), overshot: look(lookOf.overshot) };
}
