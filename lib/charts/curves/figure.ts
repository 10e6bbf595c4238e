import { thresholds } from "@/lib/stats";
import { axisOf } from "../axis/axis";
import { captionFrom } from "../figure/caption";
import type { CaptionOptions, Figure } from "../figure/figure";
import { type ShownUnit, shownUnit, unitsFor } from "../say/shown-unit";
import { type Column, count, estimate, tableFrom, words } from "../table/columns";
import { type DataTable, noValue } from "../table/data-table";
import { type CurveKind, healingCurve, incidenceCurve } from "./kind";
import { layoutCurves } from "./layout-curves";
import { atRiskOn, type CurveGroup, type CurvePointForFigure, type CurveRecord, lastDay, shareBy, shownPoints } from "./record";
import { totalText } from "./say";

/** Share healed over time, in days, with the unhealed in. */
export const consolidationCurveFigure: Figure<CurveRecord> = curveFigure(healingCurve);
/** Cumulative incidence of a first event, with what competes. */
export const cumulativeIncidenceFigure: Figure<CurveRecord> = curveFigure(incidenceCurve);

function curveFigure(kind: CurveKind): Figure<CurveRecord> {
  return {
    id: kind.id,
    layout: (record, options) => layoutCurves(kind, record, options),
    caption: (record, options = {}) => captionOf(kind, record, options),
    table: (record, unit) => tableOf(kind, record, shownUnit("days", unit)),
    units: () => unitsFor("days"),
  };
}

function captionOf(kind: CurveKind, record: CurveRecord, options: CaptionOptions): string {
  const points = record.groups.flatMap((group) => shownPoints(group));
  const limits = points.some(({ lower }) => lower !== null);
  const competing = record.competing ?? null;
  const reading = [
    kind.method,
    competing === null ? null : `What competes: ${competing}`,
    limits ? "Band: 95 % interval, clustered by patient" : null,
    points.some(({ censored = 0 }) => censored > 0) ? "Ticks: followed no further, without the event" : null,
    `Numbers at risk below; each curve is cut where fewer than ${thresholds.atRiskShown} are at risk`,
  ];
  return captionFrom(
    record,
    { what: `${record.definition.title}: ${kind.title}`, counts: totalText(record.groups, kind), reading, groups: record.groups },
    options,
  );
}

/** `day` null: the group has no curve. */
type Row = { readonly group: CurveGroup; readonly day: number | null; readonly point: CurvePointForFigure | null };

/** One row a group and round day, as far as the axis goes; of a group without a curve one row, with its counts. */
function tableOf(kind: CurveKind, { groups }: CurveRecord, unit: ShownUnit): DataTable {
  const days = daysIn(groups, unit);
  const rows = groups.flatMap((group): Row[] => {
    if (shownPoints(group).length === 0) return [{ group, day: null, point: null }];
    return days.map((day): Row => ({ group, day, point: shareBy(group, day) }));
  });
  // a day of the record is a whole one, and so is the median that the answer says
  const whole = { ...unit, digits: unit.valueDigits };
  const percent = { name: "%", perRecord: 100, digits: 1, valueDigits: 1 };
  const medians = groups.some(({ medianDays }) => medianDays)
    ? estimate<Row>("median", "Half by", whole, ({ group }) => group.medianDays)
    : [];
  return tableFrom<Row>(
    [
      words("group", "Group", ({ group }) => group.label),
      dayColumn(unit),
      count("at-risk", "At risk", ({ group, day }) => (day === null ? null : atRiskOn(group, day))),
      ...estimate<Row>("share", kind.done === "healed" ? "Healed" : "With the event", percent, ({ point }) => point),
      count("rows", "On the curve", ({ group }) => group.n),
      ...medians,
    ],
    rows,
  );
}

function dayColumn(unit: ShownUnit): Column<Row> {
  const cell = ({ day }: Row) => (day === null ? noValue : (day * unit.perRecord).toFixed(unit.valueDigits));
  return { id: "day", head: "By", unit: unit.name, align: "end", cell };
}

function daysIn(groups: readonly CurveGroup[], unit: ShownUnit): number[] {
  const last = lastDay(groups);
  if (last === 0) return [0];
  return axisOf({ from: 0, to: Math.max(30, last), start: 0, end: 1, unit, nice: false, ticks: 10 }).ticks.map(({ value }) => value);
}
