import type { Mark } from "../scene";
import { type Named, unhealedOf } from "./pile-marks";
import type { HealingGroupForFigure } from "./record";
import { markText } from "./say";
import type { ValueScale } from "./scale";

const lanePx = 9;
const mostLanes = 8;
const tick = { half: 3.5, arm: 7 } as const;

/**
 * The unhealed, apart from the healed and below them: an open-ended tick at the last film, running on to the right; after further bone
 * surgery in the ink of the rescued, on a dotted arm. Lanes are filled from the left so that ticks don't touch; past eight they may.
 */
export function unhealedMarks(group: HealingGroupForFigure, scale: ValueScale, { y: top, ...named }: Named & { y: number }) {
  const { marks: unhealed, xs } = unhealedOf(group, scale);
  const ends: number[] = [];
  const marks = unhealed.flatMap((mark, at): Mark[] => {
    const x = xs[at] as number;
    const y = top + (takeLane(ends, x) % mostLanes) * lanePx + lanePx / 2;
    const label = markText(mark, group, named);
    const rescued = mark.status === "rescued";
    const d = `M${x} ${y - tick.half}V${y + tick.half}M${x} ${y}H${x + tick.arm}`;
    const open: Mark = { mark: "path", d, ink: rescued ? "series2" : "series1", weight: 1.5, label };
    return rescued ? [open, { mark: "symbol", shape: "triangle", x, y, size: 2.6, ink: "series2" }] : [open];
  });
  return { marks, height: Math.min(ends.length, mostLanes) * lanePx };
}

/** The first lane whose last tick ends left of x. */
function takeLane(ends: number[], x: number): number {
  const free = ends.findIndex((end) => end < x - 1.5);
  const lane = free === -1 ? ends.length : free;
  ends[lane] = x + tick.arm;
  return lane;
}
