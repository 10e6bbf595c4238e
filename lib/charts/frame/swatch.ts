import type { Mark } from "../scene";
import type { Series } from "../series";

/** How a group's line and marks look, before its name. */
export function lineSwatch({ shape, dash, ink }: Series): (x: number, y: number) => readonly Mark[] {
  return (x, y) => [
    { mark: "rule", x1: x, x2: x + 26, y1: y, y2: y, ink, dash, weight: 2 },
    { mark: "symbol", shape, x: x + 13, y, size: 4.2, ink },
  ];
}
