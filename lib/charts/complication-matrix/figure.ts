import { thresholds } from "@/lib/stats";
import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { totalText } from "../say/excluded";
import { type Column, count, estimate, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { runsBeyond } from "./grid";
import { layoutComplicationMatrix } from "./layout-complication-matrix";
import { byOrigin, type ComplicationMatrixGroup, type ComplicationMatrixRecord, type ComplicationRow, eventsIn } from "./record";

/** Events by class and type, with the share that had each type. */
export const complicationMatrixFigure: Figure<ComplicationMatrixRecord> = {
  id: "complication-matrix",
  layout: layoutComplicationMatrix,
  caption: captionOfMatrix,
  table: tableOfMatrix,
  units: () => [""],
};

function captionOfMatrix(record: ComplicationMatrixRecord, options: CaptionOptions = {}): string {
  const of = record.of ?? "segment";
  const reading = [
    `Classes: ${record.scheme}`,
    "Only those whose events were looked for are counted",
    `Shares of ${of === "segment" ? "segments" : "patients"} with any event of the type, with Wilson’s 95 % interval${of === "segment" ? ", clustered by patient" : ""}`,
    runsBeyond(record)
      ? `One axis for all groups, set by those of ${thresholds.patientsForCurve} patients or more: an interval that runs beyond it has no bracket there`
      : null,
  ];
  return captionFrom(
    record,
    {
      what: `${record.definition.title} by type and class`,
      counts: totalText(record.groups, of, "looked for"),
      reading,
      groups: record.groups,
    },
    options,
  );
}

type Row = { readonly group: ComplicationMatrixGroup; readonly row: ComplicationRow };

function tableOfMatrix({ groups, classes }: ComplicationMatrixRecord): DataTable {
  const percent = { name: "%", perRecord: 100, digits: 1, valueDigits: 1 };
  const rows = groups.flatMap((group) => byOrigin(group.rows).map((row): Row => ({ group, row })));
  const byClass = classes.map(({ id, label }): Column<Row> => count(`class-${id}`, label, ({ row }) => row.counts[id] ?? 0));
  return tableFrom<Row>(
    [
      words("group", "Group", ({ group }) => group.label),
      words("origin", "Origin", ({ row }) => row.origin),
      words("type", "Type", ({ row }) => row.type),
      ...byClass,
      count("events", "Events", ({ row }) => eventsIn(row)),
      count("having", "With any", ({ row }) => row.share.x),
      count("of", "Of", ({ row }) => row.share.n),
      ...estimate<Row>("share", "Share", percent, ({ row }) => row.share),
    ],
    rows,
  );
}
