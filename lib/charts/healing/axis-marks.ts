import type { Mark } from "../scene";
import type { ValueScale } from "./scale";

export const axisPx = 44;

/** The axis under the last group, with its unit once, and the hairlines that the groups draw through themselves. */
export function axisMarks(scale: ValueScale, { y, title }: { y: number; title: string }): { behind: Mark[]; front: Mark[] } {
  const behind = scale.ticks.map(({ x }): Mark => ({ mark: "rule", x1: x, x2: x, y1: y, y2: y, ink: "hairline", weight: 1 }));
  const front: Mark[] = [
    { mark: "rule", x1: scale.left, x2: scale.right, y1: y, y2: y, ink: "ink", weight: 1 },
    ...scale.ticks.flatMap(({ x, text }): Mark[] => [
      { mark: "rule", x1: x, x2: x, y1: y, y2: y + 5, ink: "ink", weight: 1 },
      { mark: "text", x, y: y + 18, text, ink: "ink", size: 13, anchor: "middle" },
    ]),
    { mark: "text", x: scale.right, y: y + 37, text: title, ink: "muted", size: 12.5, anchor: "end" },
  ];
  if (scale.gutterX !== null) front.push({ mark: "text", x: scale.gutterX, y: y + 18, text: "→", ink: "ink", size: 13, anchor: "middle" });
  return { behind, front };
}
