import { bracketEntry, lineEntry, shapeEntry } from "../key/entries";
import type { KeyEntry } from "../key/lay-key";
import { valueText } from "../say/shown-unit";
import { type DaysAgainstGainRecord, placed } from "./record";
import { timeAndGain } from "./units";

/** Only what the figure holds. The shapes of groups stand before their names. */
export function keyOf({ groups }: DaysAgainstGainRecord): KeyEntry[] {
  const some = (part: "healed" | "rescued" | "unhealed") => groups.some((group) => placed(group)[part].marks.length > 0);
  const drawn = groups.filter((group) => placed(group).count > 0);
  const gainMm = groups.find(({ daysAtMedianGain }) => (daysAtMedianGain?.days ?? null) !== null)?.daysAtMedianGain?.gainMm;
  const alone = drawn.length === 1 || drawn.length > 3;
  const entries = [
    alone && some("healed") && shapeEntry("healed"),
    some("rescued") && shapeEntry("healed after bone surgery", { shape: "triangle", ink: alone ? "series1" : "muted" }),
    some("unhealed") && uprightTick,
    groups.some(({ line }) => line !== null) && lineEntry("on to no gain: fixed days", { dash: "dot", weight: 1 }),
    drawn.length > 3 && lineEntry("lines of the other groups", { ink: "muted", weight: 1, dash: "short" }),
    gainMm !== undefined && bracketEntry(`at equal gain, ${valueText(gainMm, timeAndGain().gain)}, 95 % CI`),
  ];
  return entries.filter((entry) => entry !== false);
}

const uprightTick: KeyEntry = {
  text: "not healed at last film",
  wide: 9,
  draw: (x, y) => [{ mark: "path", d: `M${x + 1} ${y + 4}H${x + 8}M${x + 4.5} ${y + 4}V${y - 5}`, ink: "muted", weight: 1.5 }],
};
