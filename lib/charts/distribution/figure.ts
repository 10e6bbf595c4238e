import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { excludedIn } from "../figure/source";
import { totalText } from "../say/excluded";
import { shownUnit, unitsFor } from "../say/shown-unit";
import { count, estimate, number, span, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { layoutDistribution } from "./layout-distribution";
import { countedOf, type DistributionGroup, type DistributionRecord, hasInterval } from "./record";

/** Distribution of any number measure by group. */
export const distributionFigure: Figure<DistributionRecord> = {
  id: "distribution",
  layout: layoutDistribution,
  caption: captionOfDistribution,
  table: tableOfDistribution,
  units: ({ unit }) => unitsFor(unit),
};

/** From so many values on a strip of equal ones may not fit. */
const manyRows = 400;

function captionOfDistribution(record: DistributionRecord, options: CaptionOptions = {}): string {
  const summed = record.groups.some(hasInterval);
  const reading = [
    summed ? "Brackets: mean with its 95 % interval, clustered by patient (CR2, Satterthwaite)" : null,
    summed ? "Box: quartiles and median" : null,
    record.groups.some(({ rows = [] }) => rows.length > manyRows)
      ? "Piles too high for their strip are pressed together at the top, where marks lie over each other"
      : null,
    record.band === undefined ? null : `Light band: ${record.band.label}`,
  ];
  return captionFrom(record, { counts: totalText(record.groups, countedOf(record)), reading, groups: record.groups }, options);
}

function tableOfDistribution(record: DistributionRecord, asked?: string): DataTable {
  const unit = shownUnit(record.unit, asked);
  const segments = countedOf(record) === "segment" ? [count<DistributionGroup>("segments", "Segments", (group) => group.segments)] : [];
  return tableFrom<DistributionGroup>(
    [
      words("group", "Group", (group) => group.label),
      ...segments,
      count("patients", "Patients", (group) => group.patients),
      count("measured", "Measured", (group) => group.n),
      count("excluded", "Left out", excludedIn),
      ...estimate<DistributionGroup>("mean", "Mean", unit, (group) => group.mean),
      number("median", "Median", unit, (group) => group.median?.estimate),
      span("quartiles", "Quartiles", unit, ({ quartiles }) => [quartiles?.lower ?? null, quartiles?.upper ?? null]),
    ],
    record.groups,
  );
}
