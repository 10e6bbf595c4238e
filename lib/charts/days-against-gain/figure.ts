import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { excludedIn, measuredIn } from "../healing/record";
import { totalText } from "../healing/say";
import { valueText } from "../say/shown-unit";
import { count, estimate, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { layoutDaysAgainstGain } from "./layout-days-against-gain";
import { type DaysAgainstGainGroup, type DaysAgainstGainRecord, placed } from "./record";
import { timeAndGain, timeUnits } from "./units";

/** Days against gain with the fitted lines, by group. */
export const daysAgainstGainFigure: Figure<DaysAgainstGainRecord> = {
  id: "days-against-gain",
  layout: layoutDaysAgainstGain,
  caption: captionOfDaysAgainstGain,
  table: tableOfDaysAgainstGain,
  units: () => timeUnits,
};

function captionOfDaysAgainstGain(record: DaysAgainstGainRecord, options: CaptionOptions = {}): string {
  const unhealed = record.groups.some((group) => placed(group).unhealed.marks.length > 0);
  const lines = record.groups.some(({ line }) => line !== null);
  const reading = [
    lines ? "Lines: days = a + b · cm over the healed, by group, with 95 % intervals clustered by patient (CR2, Satterthwaite)" : null,
    lines ? "a: fixed days, which don’t depend on gain; b: days per further cm" : null,
    unhealed ? "Not healed: at the last film, in no line" : null,
    record.said == null ? null : record.said.replace(/\.$/, ""),
  ];
  return captionFrom(record, { what: `${record.definition.title}: days against gain`, counts: totalText(record.groups), reading }, options);
}

function tableOfDaysAgainstGain({ groups }: DaysAgainstGainRecord, asked?: string): DataTable {
  const { time, slope, gain } = timeAndGain(asked);
  const gainMm = groups.find(({ daysAtMedianGain }) => daysAtMedianGain)?.daysAtMedianGain?.gainMm;
  const equal =
    gainMm === undefined
      ? []
      : estimate<DaysAgainstGainGroup>("equal-gain", `At ${valueText(gainMm, gain)}`, time, ({ daysAtMedianGain: at }) =>
          at ? { estimate: at.days, lower: at.lower, upper: at.upper } : null,
        );
  return tableFrom<DaysAgainstGainGroup>(
    [
      words("group", "Group", (group) => group.label),
      count("segments", "Segments", (group) => group.segments),
      count("patients", "Patients", (group) => group.patients),
      count("healed", "Healed", measuredIn),
      count("censored", "Not healed", (group) => group.censored ?? 0),
      count("ended", "Ended unhealed", (group) => group.ended ?? 0),
      count("excluded", "Left out", excludedIn),
      ...estimate<DaysAgainstGainGroup>("fixed", "Fixed", time, (group) => group.line?.fixedDays),
      ...estimate<DaysAgainstGainGroup>("per-cm", "Per further cm", slope, (group) => group.line?.daysPerCm),
      ...equal,
    ],
    groups,
  );
}
