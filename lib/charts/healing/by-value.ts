import { once } from "../figure/once";
import { type HealingGroupForFigure, type HealingMarkForFigure, isUnhealed } from "./record";

/** Marks and their values, rising. */
export type Valued = { readonly marks: HealingMarkForFigure[]; readonly values: number[] };

/** Marks by value, once a group: a page draws it at two widths. Numbers that lie side by side are sorted, and the marks follow them. */
export const byValue = once((group: HealingGroupForFigure): { readonly measured: Valued; readonly unhealed: Valued } => {
  const values = group.marks.map(({ value }) => value);
  const segments = group.marks.map(({ segment }) => segment);
  const order = Uint32Array.from(values.keys())
    .filter((row) => Number.isFinite(values[row]))
    .sort((a, b) => (values[a] as number) - (values[b] as number) || (segments[a] as number) - (segments[b] as number));
  const [measured, unhealed]: [Valued, Valued] = [
    { marks: [], values: [] },
    { marks: [], values: [] },
  ];
  for (const row of order) {
    const mark = group.marks[row] as HealingMarkForFigure;
    const held = isUnhealed(mark, group) ? unhealed : measured;
    held.marks.push(mark);
    held.values.push(values[row] as number);
  }
  return { measured, unhealed };
});

/** The values of all marks of a group that have one. */
export function valuesIn(group: HealingGroupForFigure): readonly number[] {
  const { measured, unhealed } = byValue(group);
  return [...measured.values, ...unhealed.values];
}
