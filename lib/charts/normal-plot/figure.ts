import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { excludedIn } from "../figure/source";
import { totalText } from "../say/excluded";
import { decimals } from "../say/numbers";
import { shownUnit } from "../say/shown-unit";
import { count, number, tableFrom, words } from "../table/columns";
import { layoutNormalPlot } from "./layout-normal-plot";
import type { NormalPlotGroup, NormalPlotRecord } from "./record";
import { doneOf } from "./say";

/** The q–q figure of the log-normal model of time. */
export const normalPlotFigure: Figure<NormalPlotRecord> = {
  id: "log-normal-fit",
  layout: layoutNormalPlot,
  caption: captionOfNormalPlot,
  table: tableOfNormalPlot,
  units: () => ["standard deviations"],
};

function captionOfNormalPlot(record: NormalPlotRecord, options: CaptionOptions = {}): string {
  const reading = [
    "Residuals of log(days) on log(cm) with the unhealed in; the nearer the marks lie to the line, the better a log-normal time fits",
    "Bones not healed are in the fit and in the places of the others, and are not drawn",
  ];
  return captionFrom(
    record,
    { what: "Fit of the log-normal model of time", counts: totalText(record.groups, "segment", doneOf(record.groups)), reading },
    options,
  );
}

type Row = { readonly group: NormalPlotGroup; readonly apart: number | null };

function tableOfNormalPlot({ groups }: NormalPlotRecord, asked?: string) {
  const unit = shownUnit("standard deviations", asked);
  const rows = groups.map((group): Row => ({ group, apart: furthestIn(group) }));
  return tableFrom<Row>(
    [
      words("group", "Group", ({ group }) => group.label),
      count("segments", "Segments", ({ group }) => group.segments),
      count("patients", "Patients", ({ group }) => group.patients),
      count("fitted", "In the fit", ({ group }) => group.n),
      count("healed", "Healed", ({ group }) => group.healed),
      count("excluded", "Left out", ({ group }) => excludedIn(group)),
      { id: "scale", head: "σ of log days", align: "end", cell: ({ group }) => (group.scale === null ? "–" : decimals(group.scale, 3)) },
      number("apart", "Furthest from the line", unit, ({ apart }) => apart),
    ],
    rows,
  );
}

function furthestIn({ points }: NormalPlotGroup): number | null {
  return points.length === 0 ? null : points.reduce((most, { residual, normal }) => Math.max(most, Math.abs(residual - normal)), 0);
}
