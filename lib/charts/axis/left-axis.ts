import { textWidth } from "../place/text-width";
import type { Mark } from "../scene";
import type { Axis } from "./axis";

const size = 13;

/** Room left of a plot for the numbers of its axis. */
export function leftAxisPx({ ticks }: Axis): number {
  return Math.ceil(Math.max(0, ...ticks.map(({ text }) => textWidth(text, size)))) + 8;
}

type Place = { readonly left: number; readonly right: number };

/** Hairlines through a plot and their numbers at its left; no line stands up, and no title lies on its side. */
export function leftAxis({ ticks }: Axis, { left, right }: Place): Mark[] {
  return ticks.flatMap(({ at, text }): Mark[] => [
    { mark: "rule", x1: left, x2: right, y1: at, y2: at, ink: "hairline", weight: 1 },
    { mark: "text", x: left - 8, y: at + size * 0.34, text, ink: "ink", size, anchor: "end" },
  ]);
}
