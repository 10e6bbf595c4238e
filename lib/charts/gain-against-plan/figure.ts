import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { excludedIn } from "../figure/source";
import { totalText } from "../say/excluded";
import { shownUnit, unitsFor } from "../say/shown-unit";
import { count, estimate, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { layoutGainAgainstPlan } from "./layout-gain-against-plan";
import type { GainPlanGroup, GainPlanMark, GainPlanRecord } from "./record";
import { earlyStopsText, toleranceText } from "./say";

/** Gain against plan with the line of equality and a band of tolerance. */
export const gainAgainstPlanFigure: Figure<GainPlanRecord> = {
  id: "gain-against-plan",
  layout: layoutGainAgainstPlan,
  caption: captionOfGainAgainstPlan,
  table: tableOfGainAgainstPlan,
  units: () => unitsFor("mm"),
};

function captionOfGainAgainstPlan(record: GainPlanRecord, options: CaptionOptions = {}): string {
  const unit = shownUnit("mm", options.unit);
  const stops = record.groups.flatMap((group) => {
    const text = earlyStopsText(group);
    return text === null ? [] : [record.groups.length > 1 ? `${group.label}: ${text}` : text];
  });
  const reading = [
    `Slanted line: gained as ${record.plan ?? "planned at start"}; light band: ${toleranceText(record, unit)}`,
    "Gain less plan with its 95 % interval, clustered by patient (CR2, Satterthwaite); share with Wilson’s interval, clustered by patient",
    ...stops,
  ];
  return captionFrom(record, { what: "Gain against plan", counts: totalText(record.groups), reading, groups: record.groups }, options);
}

function tableOfGainAgainstPlan(record: GainPlanRecord, asked?: string): DataTable {
  const unit = shownUnit("mm", asked);
  const percent = { name: "%", perRecord: 100, digits: 0, valueDigits: 0 };
  const having = (outcome: GainPlanMark["outcome"]) => (group: GainPlanGroup) =>
    group.marks.filter((mark) => mark.outcome === outcome).length;
  return tableFrom<GainPlanGroup>(
    [
      words("group", "Group", (group) => group.label),
      count("segments", "Segments", (group) => group.segments),
      count("patients", "Patients", (group) => group.patients),
      count("measured", "Measured", (group) => group.n),
      count("excluded", "Left out", excludedIn),
      ...estimate<GainPlanGroup>("error", "Gain less plan", unit, (group) => group.error),
      count("within", toleranceText(record, unit), ({ within }) => within.x),
      ...estimate<GainPlanGroup>("within-share", "Share within", percent, (group) => group.within),
      count("stopped-early", "Stopped early", having("stopped-early")),
      count("overshot", "Overshot", having("overshot")),
    ],
    record.groups,
  );
}
