import type { Head } from "../head/lay-head";
import { isUnhealed } from "../healing/record";
import { countsText, totalText } from "../healing/say";
import { countedIn } from "../say/numbers";
import { shownInterval, shownLimits } from "../say/shown-estimate";
import { shownText, valueText } from "../say/shown-unit";
import type { DaysAgainstGainGroup, DaysAgainstGainRecord, PlacedMark } from "./record";
import type { TimeAndGain } from "./units";

const noLine = "too few patients for a line";

/** What stands over a group: its line as an equation, the two parts with their intervals, its days at equal gain, its counts. */
export function headOf(group: DaysAgainstGainGroup, units: TimeAndGain): Head {
  const { line } = group;
  const lines = line === null ? [] : [partsText(line, units)];
  const at = equalGainText(group, units);
  return {
    name: group.label,
    estimate: line === null ? noLine : equationText(line, units),
    lines: at === null ? lines : [...lines, at],
    counts: [group.segments === 0 ? "no segment in this group" : countsText(group)],
  };
}

type Line = NonNullable<DaysAgainstGainGroup["line"]>;

/** `days = 42.1 + 21.3 · cm`. */
export function equationText({ fixedDays, daysPerCm }: Line, { time, slope }: TimeAndGain): string {
  if (fixedDays.estimate === null || daysPerCm.estimate === null) return noLine;
  const per = shownText(Math.abs(daysPerCm.estimate), slope);
  return `${time.name} = ${shownText(fixedDays.estimate, time)} ${daysPerCm.estimate < 0 ? "−" : "+"} ${per} · cm`;
}

function partsText({ fixedDays, daysPerCm, n, patients }: Line, { time, slope }: TimeAndGain): string {
  const fixed = shownInterval(fixedDays, time) ?? "no interval";
  const further = shownInterval(daysPerCm, slope) ?? "no interval";
  return `fixed ${time.name} ${fixed}; per further cm ${further} (${countedIn(n, patients)})`;
}

export function equalGainText({ daysAtMedianGain: at = null }: DaysAgainstGainGroup, { time, gain }: TimeAndGain): string | null {
  if (at === null || at.days === null) return null;
  return `at ${valueText(at.gainMm, gain)}: ${shownLimits({ estimate: at.days, lower: at.lower, upper: at.upper }, time)}`;
}

/** What a reader hears of one segment: `Tibia: 142 days, 4.5 cm gained, healed`. */
export function markText(mark: PlacedMark, group: DaysAgainstGainGroup, { time, gain }: TimeAndGain, name: string | null): string {
  const unhealed = isUnhealed(mark, group);
  const days = valueText(mark.days, time);
  const words = `${unhealed ? `more than ${days}` : days}, ${valueText(mark.gainMm, gain)} gained, ${fateText(mark, unhealed)}`;
  return name === null ? words : `${name}: ${words}`;
}

function fateText({ rescued, status }: PlacedMark, unhealed: boolean): string {
  if (unhealed) return status === "rescued" ? "had further bone surgery, not healed at last film" : "not healed at last film";
  return rescued ? "healed after further bone surgery" : "healed";
}

export function describe(record: DaysAgainstGainRecord, units: TimeAndGain): string {
  const groups = record.groups.map((group) => {
    const { name, estimate, lines = [], counts = [] } = headOf(group, units);
    return `${name}: ${[estimate, ...lines, ...counts].join("; ")}.`;
  });
  const said = record.said ?? null;
  return [
    `Each segment is a mark: length gained in cm across, ${units.time.name} upwards, with a straight line a group.`,
    `${totalText(record.groups)}.`,
    ...groups,
    ...(said === null ? [] : [said]),
  ].join(" ");
}
