import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { excludedIn } from "../figure/source";
import { totalText } from "../say/excluded";
import { shownUnit, unitsFor } from "../say/shown-unit";
import { count, estimate, number, span, tableFrom, words } from "../table/columns";
import type { DataTable } from "../table/data-table";
import { layoutCourse } from "./layout-course";
import { type CourseGroup, type CourseRecord, type LagPoint, ratesOf } from "./record";
import { done } from "./say";

/** Course of distraction of a group against what was prescribed. */
export const courseFigure: Figure<CourseRecord> = {
  id: "distraction-course",
  layout: layoutCourse,
  caption: captionOfCourse,
  table: tableOfCourse,
  units: () => unitsFor("mm"),
};

function captionOfCourse(record: CourseRecord, options: CaptionOptions = {}): string {
  const reading = [
    "Above: a line a segment through its visits, from the start of distraction; long dashes: what was prescribed",
    record.groups.some((group) => ratesOf(group) !== null)
      ? "Below: ahead of or behind each segment’s own prescription, which ends at its plan"
      : null,
    record.groups.some(({ lag = [] }) => lag.length > 0) ? "Diamonds: median, with quartiles, of those seen" : null,
    "Rate: length over calendar days of distraction, mean with its 95 % interval, clustered by patient (CR2, Satterthwaite)",
  ];
  const what = "Course of distraction against prescription";
  return captionFrom(record, { what, counts: totalText(record.groups, "segment", done), reading, groups: record.groups }, options);
}

type Row = { readonly group: CourseGroup; readonly lag: LagPoint | null };

/** A row a group, or, where the record has them, a row a group and round day. */
function tableOfCourse({ groups }: CourseRecord, asked?: string): DataTable {
  const unit = shownUnit("mm", asked);
  const perDay = shownUnit("mm/day");
  const rows = groups.flatMap((group): Row[] => {
    const lags = group.lag ?? [];
    return lags.length === 0 ? [{ group, lag: null }] : lags.map((lag) => ({ group, lag }));
  });
  return tableFrom<Row>(
    [
      words("group", "Group", ({ group }) => group.label),
      count("segments", "Segments", ({ group }) => group.segments),
      count("patients", "Patients", ({ group }) => group.patients),
      count("measured", "With visits", ({ group }) => group.n),
      count("excluded", "Left out", ({ group }) => excludedIn(group)),
      ...estimate<Row>("rate", "Rate", perDay, ({ group }) => group.rate),
      span("prescribed", "Prescribed", perDay, ({ group }) => ratesOf(group) ?? [null, null]),
      count("day", "On day", ({ lag }) => lag?.day),
      count("seen", "Seen then", ({ lag }) => lag?.n),
      number("ahead", "Median ahead", unit, ({ lag }) => lag?.median),
      span("ahead-quartiles", "Quartiles ahead", unit, ({ lag }) => [lag?.lower ?? null, lag?.upper ?? null]),
    ],
    rows,
  );
}
