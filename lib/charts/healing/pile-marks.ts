import { pile } from "../place/pile";
import type { ClockUnit } from "../say/units";
import type { Mark } from "../scene";
import { type HealingGroupForFigure, type HealingMarkForFigure, isUnhealed } from "./record";
import { markText } from "./say";
import type { ValueScale } from "./scale";

/** Radii tried from large to small until the highest pile fits. */
const radii = [4.5, 4, 3.5, 3, 2.5, 2, 1.6, 1.3, 1] as const;
const leastRadius = 1;

type Standing = { readonly mark: HealingMarkForFigure; readonly x: number };

/** The healed (or measured) of a group, from left to right. */
export function measuredMarks(group: HealingGroupForFigure, scale: ValueScale): Standing[] {
  return standing(
    group.marks.filter((mark) => !isUnhealed(mark, group)),
    scale,
  );
}

/** Marks by value, with the place of each; those beyond the axis stand in its gutter. */
export function standing(marks: readonly HealingMarkForFigure[], scale: ValueScale): Standing[] {
  return marks
    .filter((mark) => Number.isFinite(mark.value))
    .map((mark) => ({ mark, x: scale.gutterX !== null && scale.isBeyond(mark.value) ? scale.gutterX : scale.x(mark.value) }))
    .sort((a, b) => a.mark.value - b.mark.value || a.mark.segment - b.mark.segment);
}

/** One radius for all groups, so that piles can be compared: the largest whose highest pile fits. */
export function radiusFor(groups: readonly (readonly Standing[])[], heightPx: number): number {
  const rows = groups.map((group) => group.map(({ x }) => x));
  const fits = (radius: number) =>
    rows.every((xs) => !surelyTooHigh(xs, radius, heightPx) && pile(xs, radius).every((height) => height + radius <= heightPx));
  return radii.find(fits) ?? leastRadius;
}

/** Spares the piling where counting is enough: so many within one width can't lie below the height. */
function surelyTooHigh(xs: readonly number[], radius: number, heightPx: number): boolean {
  const columns = new Map<number, number>();
  for (const x of xs) {
    const column = Math.floor(x / (2 * radius));
    columns.set(column, (columns.get(column) ?? 0) + 1);
  }
  return Math.max(0, ...columns.values()) * radius * 1.2 > heightPx;
}

/** How high each stands above the line, px. Past the smallest radius discs may overlap; every segment stays a mark. */
export function raise(
  marks: readonly Standing[],
  radius: number,
  heightPx: number,
): { readonly heights: number[]; readonly height: number } {
  const heights = pile(
    marks.map(({ x }) => x),
    radius,
  );
  const highest = heights.reduce((a, b) => Math.max(a, b + radius), 0);
  const squeeze = highest > heightPx ? heightPx / highest : 1;
  return { heights: heights.map((height) => height * squeeze), height: highest * squeeze };
}

export type Named = { readonly unit: ClockUnit; readonly name: string | null };
export type Piled = { readonly marks: readonly Standing[]; readonly heights: readonly number[]; readonly radius: number };

/** The pile of a group on its line at `y`. Healed after further bone surgery: a triangle, a little larger, in another ink. */
export function pileMarks(group: HealingGroupForFigure, { marks, heights, radius }: Piled, { y, ...named }: Named & { y: number }): Mark[] {
  return marks.map(({ mark, x }, index): Mark => {
    const at = { mark: "symbol", x, y: y - (heights[index] ?? radius), label: markText(mark, group, named) } as const;
    return mark.rescued
      ? { ...at, shape: "triangle", size: Math.max(radius * 1.15, 2.2), ink: "series2" }
      : { ...at, shape: "disc", size: radius * 0.92, ink: "series1" };
  });
}
