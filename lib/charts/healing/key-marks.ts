import { boxEntry, bracketEntry, shapeEntry } from "../key/entries";
import { type KeyEntry, layKey } from "../key/lay-key";
import type { Mark } from "../scene";
import { type HealingGroupForFigure, type HealingMarkForFigure, type HealingRecordForFigure, isHealing, isUnhealed } from "./record";

/** The key: only what the figure holds. */
export function keyMarks(record: HealingRecordForFigure, place: { width: number; y: number }): { marks: Mark[]; height: number } {
  return layKey(entriesOf(record), place);
}

function entriesOf({ groups }: HealingRecordForFigure): KeyEntry[] {
  const some = (holds: (mark: HealingMarkForFigure, group: HealingGroupForFigure) => boolean) =>
    groups.some((group) => group.marks.some((mark) => holds(mark, group)));
  const healing = groups.some(isHealing);
  return [
    some((mark, group) => !isUnhealed(mark, group) && !mark.rescued) && shapeEntry(healing ? "healed" : "measured"),
    some((mark, group) => !isUnhealed(mark, group) && mark.rescued) && triangle,
    some((mark, group) => isUnhealed(mark, group) && mark.status !== "rescued") && openTick("unhealed at last film", false),
    some((mark, group) => isUnhealed(mark, group) && mark.status === "rescued") && openTick("unhealed after bone surgery", true),
    groups.some((group) => group.mean.lower !== null && group.quartiles.lower !== null) && boxEntry("quartiles, median"),
    groups.some((group) => group.mean.lower !== null) && bracketEntry(healing ? "mean of healed, 95 % CI" : "mean, 95 % CI"),
  ].filter((entry) => entry !== false);
}

const triangle: KeyEntry = {
  text: "healed after bone surgery",
  wide: 10,
  draw: (x, y) => [{ mark: "symbol", shape: "triangle", x: x + 5, y: y + 0.5, size: 4.2, ink: "series2" }],
};
const openTick = (text: string, rescued: boolean): KeyEntry => ({
  text,
  wide: 9,
  draw: (x, y) => {
    const ink = rescued ? "series2" : "series1";
    const tick: Mark = { mark: "path", d: `M${x + 1} ${y - 4}V${y + 4}M${x + 1} ${y}H${x + 9}`, ink, weight: 1.5 };
    return rescued ? [tick, { mark: "symbol", shape: "triangle", x: x + 1, y, size: 2.8, ink }] : [tick];
  },
});
