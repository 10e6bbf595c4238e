import type { Limits } from "../figure/source";
import { decimals } from "../say/numbers";
import { shownUnit } from "../say/shown-unit";
import type { ClockUnit } from "../say/units";
import { type Column, count, number, span, tableFrom, words } from "../table/columns";
import { type DataTable, noValue } from "../table/data-table";
import type { HealingGroupForFigure, HealingRecordForFigure } from "./record";

/** What several bones of a patient do to the interval of the mean: with the patient as the unit of chance, and as if each bone were another patient's. */
export function clusteringOf({ groups }: HealingRecordForFigure, shown: ClockUnit = "days/cm"): DataTable {
  const unit = shownUnit(shown === "months/cm" ? "days/cm" : shown, shown);
  const columns: Column<HealingGroupForFigure>[] = [
    words("group", "Group", ({ label }) => label),
    count("n", "Segments in the mean", ({ mean }) => mean.n),
    count("patients", "Patients", ({ mean }) => mean.patients),
    number("mean", "Mean", unit, ({ mean }) => mean.estimate),
    span("by-patient", "95 % CI, by patient", unit, ({ mean }) => [mean.lower, mean.upper]),
    span("by-segment", "95 % CI, bones as patients", unit, ({ plain }) => [plain.lower, plain.upper]),
    { id: "ratio", head: "Width, first over second", align: "end", cell: ratioText },
  ];
  return tableFrom(columns, groups);
}

function ratioText({ mean, plain }: HealingGroupForFigure): string {
  const [clustered, single] = [widthOf(mean), widthOf(plain)];
  return clustered === null || single === null || single === 0 ? noValue : decimals(clustered / single, 2);
}

function widthOf({ lower, upper }: Limits): number | null {
  return lower === null || upper === null ? null : upper - lower;
}
