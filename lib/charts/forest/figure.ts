import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { counted } from "../say/numbers";
import { unitsFor } from "../say/shown-unit";
import { count, estimate, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { layoutForest } from "./layout-forest";
import type { ForestRecord, ForestRow } from "./record";
import { forestUnit } from "./scale";

/** Differences or ratios of groups, a row each. */
export const forestFigure: Figure<ForestRecord> = {
  id: "comparison-forest",
  layout: layoutForest,
  caption: captionOfForest,
  table: tableOfForest,
  units: ({ unit }) => unitsFor(unit),
};

function captionOfForest(record: ForestRecord, options: CaptionOptions = {}): string {
  const untested = record.rows.filter(({ tested }) => !tested).length;
  const reading = [
    `Brackets: ${record.kind === "ratio" ? "ratio on a logarithmic axis" : "difference"} with its 95 % interval, clustered by patient`,
    untested === 0 ? null : `Hollow: not tested or not comparable (${untested} of ${record.rows.length})`,
    `Left of no difference: ${record.sides[0]}; right: ${record.sides[1]}`,
  ];
  return captionFrom(record, { counts: counted(record.rows.length, "comparison"), reading }, options);
}

function tableOfForest(record: ForestRecord, asked?: string): DataTable {
  const unit = forestUnit(record, asked);
  const head = record.kind === "ratio" ? "Ratio" : "Difference";
  const headed = record.rows.some(({ heading }) => heading !== undefined);
  const detailed = record.rows.some(({ detail }) => detail !== undefined);
  return tableFrom<ForestRow>(
    [
      ...(headed ? [words<ForestRow>("heading", "Of", ({ heading = "–" }) => heading)] : []),
      words("label", "Comparison", ({ label }) => label),
      ...estimate<ForestRow>("estimate", head, unit, (row) => row),
      ...(record.of === "person" ? [] : [count<ForestRow>("segments", "Segments", ({ n }) => n)]),
      count("patients", "Patients", ({ patients }) => patients),
      words("tested", "Tested", ({ tested }) => (tested ? "yes" : "no")),
      ...(detailed ? [words<ForestRow>("detail", "Remarks", ({ detail = "–" }) => detail)] : []),
    ],
    record.rows,
  );
}
