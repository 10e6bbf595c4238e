import type { Raised } from "../place/fit-pile";
import { type Look, symbolMarksByLook } from "../place/symbols";
import type { ClockUnit } from "../say/units";
import type { Mark } from "../scene";
import { byValue, type Valued } from "./by-value";
import type { HealingGroupForFigure, HealingMarkForFigure } from "./record";
import { markText } from "./say";
import type { ValueScale } from "./scale";

/** Marks from left to right, and where each stands. */
export type Standing = { readonly marks: readonly HealingMarkForFigure[]; readonly xs: readonly number[] };

/** The healed (or measured) of a group, from left to right. */
export function measuredMarks(group: HealingGroupForFigure, scale: ValueScale): Standing {
  return standing(byValue(group).measured, scale);
}

/** The unhealed of a group, from left to right. */
export function unhealedOf(group: HealingGroupForFigure, scale: ValueScale): Standing {
  return standing(byValue(group).unhealed, scale);
}

/** Those beyond the axis stand in its gutter. */
function standing({ marks, values }: Valued, scale: ValueScale): Standing {
  return { marks, xs: values.map((value) => (scale.gutterX !== null && scale.isBeyond(value) ? scale.gutterX : scale.x(value))) };
}

export type Named = { readonly unit: ClockUnit; readonly name: string | null };
export type Piled = Pick<Raised, "xs" | "heights"> & { readonly marks: readonly HealingMarkForFigure[]; readonly radius: number };

/** The pile of a group on its line at `y`. Healed after further bone surgery: a triangle, a little larger, in another ink. */
export function pileMarks(
  group: HealingGroupForFigure,
  { marks, xs, heights, radius }: Piled,
  { y, ...named }: Named & { y: number },
): Mark[] {
  const healed: Look = { shape: "disc", size: radius * 0.92, ink: "series1" };
  const rescued: Look = { shape: "triangle", size: Math.max(radius * 1.15, 2.2), ink: "series2" };
  return symbolMarksByLook({
    xs,
    ys: heights.map((height) => y - height),
    lookOf: (place) => (marks[place]?.rescued ? rescued : healed),
    labelOf: (place) => markText(marks[place] as HealingMarkForFigure, group, named),
  });
}
