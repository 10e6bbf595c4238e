import { textWidth } from "../place/text-width";
import type { Mark } from "../scene";
import type { Axis } from "./axis";

/** Height of an axis with its numbers and its title. */
export const bottomAxisPx = 44;
const size = 13;

type Place = { readonly y: number; readonly left: number; readonly right: number; readonly title: string };

/** The line under a plot: ticks, their numbers, and the unit once, at the right end. Numbers that would touch are left out, every second first. */
export function bottomAxis({ ticks }: Axis, { y, left, right, title }: Place): Mark[] {
  const shown = thinned(ticks);
  return [
    { mark: "rule", x1: left, x2: right, y1: y, y2: y, ink: "ink", weight: 1 },
    ...ticks.map(({ at }): Mark => ({ mark: "rule", x1: at, x2: at, y1: y, y2: y + 5, ink: "ink", weight: 1 })),
    ...shown.map(({ at, text }): Mark => ({ mark: "text", x: at, y: y + 18, text, ink: "ink", size, anchor: "middle" })),
    ...(title === "" ? [] : [{ mark: "text", x: right, y: y + 37, text: title, ink: "muted", size: 12.5, anchor: "end" } as const]),
  ];
}

/** Every tick, or every second, fourth …, until their numbers stand apart. */
export function thinned<T extends { readonly at: number; readonly text: string }>(ticks: readonly T[]): readonly T[] {
  const touching = ticks.some((tick, index) => {
    const next = ticks[index + 1];
    return next !== undefined && Math.abs(next.at - tick.at) < (textWidth(tick.text, size) + textWidth(next.text, size)) / 2 + 5;
  });
  return touching ? thinned(ticks.filter((_, index) => index % 2 === 0)) : ticks;
}

/** Hairlines through a strip at the ticks of the axis under it. */
export function uprightHairlines({ ticks }: Axis, { from, to }: { readonly from: number; readonly to: number }): Mark[] {
  return ticks.map(({ at }) => ({ mark: "rule", x1: at, x2: at, y1: from, y2: to, ink: "hairline", weight: 1 }));
}
