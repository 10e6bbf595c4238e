import { once } from "../figure/once";
import type { Raised } from "../place/fit-pile";
import type { ClockUnit } from "../say/units";
import type { Mark } from "../scene";
import { type HealingGroupForFigure, type HealingMarkForFigure, isUnhealed } from "./record";
import { markText } from "./say";
import type { ValueScale } from "./scale";

type Standing = { readonly mark: HealingMarkForFigure; readonly x: number };

/** The healed (or measured) of a group, from left to right. */
export function measuredMarks(group: HealingGroupForFigure, scale: ValueScale): Standing[] {
  return standing(byValue(group).measured, scale);
}

/** The unhealed of a group, from left to right. */
export function unhealedOf(group: HealingGroupForFigure, scale: ValueScale): Standing[] {
  return standing(byValue(group).unhealed, scale);
}

/** Marks by value, once a group: a page draws it at two widths. Numbers that lie side by side are sorted, and the marks follow them. */
const byValue = once((group: HealingGroupForFigure) => {
  const values = Float64Array.from(group.marks, ({ value }) => value);
  const segments = Float64Array.from(group.marks, ({ segment }) => segment);
  const order = Uint32Array.from(values.keys())
    .filter((row) => Number.isFinite(values[row]))
    .sort((a, b) => (values[a] as number) - (values[b] as number) || (segments[a] as number) - (segments[b] as number));
  const [measured, unhealed]: [HealingMarkForFigure[], HealingMarkForFigure[]] = [[], []];
  for (const row of order) {
    const mark = group.marks[row] as HealingMarkForFigure;
    (isUnhealed(mark, group) ? unhealed : measured).push(mark);
  }
  return { measured, unhealed };
});

/** Marks with the place of each; those beyond the axis stand in its gutter. */
function standing(marks: readonly HealingMarkForFigure[], scale: ValueScale): Standing[] {
  return marks.map((mark) => ({ mark, x: scale.gutterX !== null && scale.isBeyond(mark.value) ? scale.gutterX : scale.x(mark.value) }));
}

export type Named = { readonly unit: ClockUnit; readonly name: string | null };
export type Piled = Pick<Raised, "xs" | "heights"> & { readonly marks: readonly Standing[]; readonly radius: number };

/** The pile of a group on its line at `y`. Healed after further bone surgery: a triangle, a little larger, in another ink. */
export function pileMarks(
  group: HealingGroupForFigure,
  { marks, xs, heights, radius }: Piled,
  { y, ...named }: Named & { y: number },
): Mark[] {
  return marks.map(({ mark, x }, index): Mark => {
    const { rescued } = mark;
    return {
      mark: "symbol",
      shape: rescued ? "triangle" : "disc",
      x: xs[index] ?? x,
      y: y - (heights[index] ?? radius),
      size: rescued ? Math.max(radius * 1.15, 2.2) : radius * 0.92,
      ink: rescued ? "series2" : "series1",
      get label() {
        return markText(mark, group, named);
      },
    };
  });
}
