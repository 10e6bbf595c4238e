import type { Dash, Ink, Shape } from "./scene";

/** How a group is told apart where several share a frame: by shape and line first, by ink third. */
export type Series = { readonly shape: Shape; readonly dash: Dash; readonly ink: Ink };

const series: readonly Series[] = [
  { shape: "disc", dash: "solid", ink: "series1" },
  { shape: "diamond", dash: "long", ink: "series2" },
  { shape: "square", dash: "dot", ink: "series3" },
  { shape: "triangle", dash: "long-dot", ink: "series4" },
  { shape: "cross", dash: "short", ink: "series5" },
];

/** More groups than this don't share a frame: each gets a small one of its own. */
export const groupsPerFrame = series.length;

/** @throws RangeError past five groups in one frame */
export function seriesOf(index: number): Series {
  const found = series[index];
  if (!found) throw new RangeError(`seriesOf requires at most ${groupsPerFrame} groups in one frame, received ${index + 1}`);
  return found;
}
