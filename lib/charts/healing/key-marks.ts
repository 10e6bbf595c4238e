import { textWidth } from "../place/text-width";
import type { Mark } from "../scene";
import { type HealingGroupForFigure, type HealingMarkForFigure, type HealingRecordForFigure, isHealing, isUnhealed } from "./record";

const size = 12.5;
const linePx = 20;

type Entry = { readonly text: string; readonly wide: number; readonly draw: (x: number, y: number) => readonly Mark[] };

/** The key: one line, or as many as the width asks for, and only what the figure holds. */
export function keyMarks(record: HealingRecordForFigure, { width, y }: { width: number; y: number }): { marks: Mark[]; height: number } {
  const marks: Mark[] = [];
  let x = 1;
  let line = 0;
  for (const entry of entriesOf(record)) {
    const needs = entry.wide + 6 + textWidth(entry.text, size);
    if (x > 1 && x + needs > width) [x, line] = [1, line + 1];
    const centre = y + line * linePx + linePx / 2;
    marks.push(...entry.draw(x, centre), {
      mark: "text",
      x: x + entry.wide + 6,
      y: centre + size * 0.34,
      text: entry.text,
      ink: "muted",
      size,
    });
    x += needs + 18;
  }
  return { marks, height: (line + 1) * linePx };
}

function entriesOf({ groups }: HealingRecordForFigure): Entry[] {
  const some = (holds: (mark: HealingMarkForFigure, group: HealingGroupForFigure) => boolean) =>
    groups.some((group) => group.marks.some((mark) => holds(mark, group)));
  const healing = groups.some(isHealing);
  return [
    some((mark, group) => !isUnhealed(mark, group) && !mark.rescued) && disc(healing ? "healed" : "measured"),
    some((mark, group) => !isUnhealed(mark, group) && mark.rescued) && triangle,
    some((mark, group) => isUnhealed(mark, group) && mark.status !== "rescued") && openTick("not healed at last film", false),
    some((mark, group) => isUnhealed(mark, group) && mark.status === "rescued") && openTick("not healed after bone surgery", true),
    groups.some((group) => group.quartiles.lower !== null) && box,
    groups.some((group) => group.mean.estimate !== null) && bracket(healing ? "mean of healed, 95 % CI" : "mean, 95 % CI"),
  ].filter((entry) => entry !== false);
}

const disc = (text: string): Entry => ({
  text,
  wide: 8,
  draw: (x, y) => [{ mark: "symbol", shape: "disc", x: x + 4, y, size: 4, ink: "series1" }],
});
const triangle: Entry = {
  text: "healed after bone surgery",
  wide: 10,
  draw: (x, y) => [{ mark: "symbol", shape: "triangle", x: x + 5, y: y + 0.5, size: 4.2, ink: "series2" }],
};
const openTick = (text: string, rescued: boolean): Entry => ({
  text,
  wide: 9,
  draw: (x, y) => {
    const ink = rescued ? "series2" : "series1";
    const tick: Mark = { mark: "path", d: `M${x + 1} ${y - 4}V${y + 4}M${x + 1} ${y}H${x + 9}`, ink, weight: 1.5 };
    return rescued ? [tick, { mark: "symbol", shape: "triangle", x: x + 1, y, size: 2.8, ink }] : [tick];
  },
});
const box: Entry = {
  text: "quartiles, median",
  wide: 22,
  draw: (x, y) => [
    { mark: "path", d: `M${x} ${y - 4}H${x + 22}V${y + 4}H${x}Z`, ink: "muted", weight: 1 },
    { mark: "rule", x1: x + 10, x2: x + 10, y1: y - 6, y2: y + 6, ink: "ink", weight: 2 },
  ],
};
const bracket = (text: string): Entry => ({
  text,
  wide: 22,
  draw: (x, y) => {
    const ends = `M${x + 3} ${y - 5}H${x}V${y + 5}H${x + 3}M${x + 19} ${y - 5}H${x + 22}V${y + 5}H${x + 19}`;
    return [
      { mark: "path", d: `M${x} ${y}H${x + 22}${ends}`, ink: "ink", weight: 1.5 },
      { mark: "symbol", shape: "diamond", x: x + 11, y, size: 3.6, ink: "ink" },
    ];
  },
});
