import { counted, countedIn, decimals, grouped } from "../say/numbers";
import { type ClockUnit, indexText } from "../say/units";
import {
  excludedIn,
  type HealingCounts,
  type HealingGroupForFigure,
  type HealingMarkForFigure,
  isHealing,
  isUnhealed,
  measuredIn,
  total,
} from "./record";

/** `43 segments in 30 patients: 38 healed (2 after further bone surgery), 3 not healed at last film, 2 left out`; the parts add up. */
export function countsText(group: HealingCounts): string {
  return `${countedIn(group.segments, group.patients)}: ${partsText([group])}`;
}

/** All groups together. Patients are not added up, since one may stand in several groups. */
export function totalText(groups: readonly HealingCounts[]): string {
  const [only] = groups;
  if (groups.length === 1 && only) return countsText(only);
  const segments = total(groups, (group) => group.segments);
  return `${counted(segments, "segment")} in ${counted(groups.length, "group")}: ${partsText(groups)}`;
}

function partsText(groups: readonly HealingCounts[]): string {
  const parts = [
    measuredText(groups),
    part(
      total(groups, (group) => group.censored ?? 0),
      "not healed at last film",
    ),
    part(
      total(groups, (group) => group.ended ?? 0),
      "ended unhealed",
    ),
    part(total(groups, excludedIn), "left out"),
  ];
  return parts.filter((text) => text !== null).join(", ");
}

function measuredText(groups: readonly HealingCounts[]): string {
  const n = total(groups, measuredIn);
  const rescued = total(groups, (group) => group.rescued ?? 0);
  if (!groups.some(isHealing)) return `${grouped(n)} measured`;
  return rescued === 0 ? `${grouped(n)} healed` : `${grouped(n)} healed (${grouped(rescued)} after further bone surgery)`;
}

function part(n: number, words: string): string | null {
  return n === 0 ? null : `${grouped(n)} ${words}`;
}

/** What a reader hears of one segment: `Tibia: 31.2 days/cm, healed, 45 mm gained`. */
export function markText(
  mark: HealingMarkForFigure,
  group: HealingGroupForFigure,
  { unit, name }: { unit: ClockUnit; name: string | null },
) {
  const value = `${indexText(mark.value, unit)} ${unit}`;
  const unhealed = isUnhealed(mark, group);
  const fate = unhealed ? unhealedText(mark) : healedText(mark, group);
  const gain = mark.gainMm === null ? null : `${decimals(mark.gainMm, 0)} mm gained`;
  const words = [unhealed ? `more than ${value}` : value, fate, gain].filter((word) => word !== null).join(", ");
  return name === null ? words : `${name}: ${words}`;
}

function healedText(mark: HealingMarkForFigure, group: HealingGroupForFigure): string | null {
  if (!isHealing(group)) return null;
  return mark.rescued ? "healed after further bone surgery" : "healed";
}

function unhealedText({ status }: HealingMarkForFigure): string {
  return status === "rescued" ? "had further bone surgery, not healed at last film" : "not healed at last film";
}

/** `quartiles 25.1 to 37.0, median 30.2 days/cm`; an upper quartile that was never reached is said to be so. */
export function quartilesText(group: HealingGroupForFigure, unit: ClockUnit): string | null {
  const { lower, upper } = group.quartiles;
  const median = group.median.estimate;
  if (lower === null && median === null) return null;
  const span = lower === null ? null : `quartiles ${indexText(lower, unit)} to ${upper === null ? "not reached" : indexText(upper, unit)}`;
  const middle = median === null ? "median not reached" : `median ${indexText(median, unit)}`;
  return `${[span, middle].filter((text) => text !== null).join(", ")} ${unit}`;
}
