import { pile } from "./pile";
import { spreader, spreadTies } from "./spread-ties";

/** Radii tried from large to small until the highest pile fits. */
const radii = [4.5, 4, 3.5, 3, 2.5, 2, 1.6, 1.3, 1] as const;
const leastRadius = 1;

/** One radius for all groups, so that piles can be compared: the largest whose highest pile fits. */
export function radiusFor(rows: readonly (readonly number[])[], heightPx: number): number {
  const spreaders = rows.map(spreader);
  const fits = (radius: number) =>
    spreaders.every((spread) => {
      const xs = spread(radius);
      return !surelyTooHigh(xs, radius, heightPx) && pile(xs, radius).every((height) => height + radius <= heightPx);
    });
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

export type Raised = { readonly xs: readonly number[]; readonly heights: readonly number[]; readonly height: number };

/** Where each stands: its x (aside only where equal values heap) and its height above the line, px. Past the smallest radius discs may overlap; every one stays a mark. */
export function raise(values: readonly number[], radius: number, heightPx: number): Raised {
  const xs = spreadTies(values, radius);
  const heights = pile(xs, radius);
  const highest = heights.reduce((a, b) => Math.max(a, b + radius), 0);
  const squeeze = highest > heightPx ? heightPx / highest : 1;
  return { xs, heights: heights.map((height) => height * squeeze), height: highest * squeeze };
}
