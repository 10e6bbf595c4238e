import type { Limits } from "../figure/source";
import { decimals, grouped } from "../say/numbers";
import { type ClockUnit, indexText } from "../say/units";
import { type DataTable, noValue as none, type TableColumn } from "../table/data-table";
import { excludedIn, type HealingGroupForFigure, type HealingRecordForFigure, isHealing, measuredIn } from "./record";

type Column = TableColumn & { readonly cell: (group: HealingGroupForFigure, unit: ClockUnit) => string };

/** The figure's numbers as a table: one row a group, units once in the heads. */
export function tableOf(record: HealingRecordForFigure, unit: ClockUnit = "days/cm"): DataTable {
  const columns = columnsFor(record, unit);
  return {
    columns: columns.map(({ cell: _, unit: own, ...column }) => ({
      ...column,
      ...(own === undefined ? {} : { unit: own === "" ? unit : own }),
    })),
    rows: record.groups.map((group) => columns.map((column) => column.cell(group, unit))),
  };
}

function columnsFor({ groups }: HealingRecordForFigure, unit: ClockUnit): Column[] {
  const films = groups.some((group) => group.medianFilmIntervalDays !== null);
  const healing = groups.length === 0 || groups.some(isHealing);
  const own = healing ? columns : columns.filter(({ id }) => id !== "censored" && id !== "ended").map(renamed);
  // a ratio of sums is days over cm whatever the clock: beside days alone it would be another thing under the same unit
  const index =
    unit === "days/cm" || unit === "months/cm" ? own : own.filter(({ id, under }) => id !== "ratio-of-sums" && under !== "ratio-of-sums");
  const withDays = [...index, ...equalGainColumns(groups)];
  return films ? [...withDays, filmColumn] : withDays;
}

/** A clock that doesn't end at consolidation measures; nothing heals under it. */
function renamed(column: Column): Column {
  return column.id === "measured" ? { ...column, head: "Measured" } : column;
}

const count = (id: string, head: string, pick: (group: HealingGroupForFigure) => number): Column => ({
  id,
  head,
  align: "end",
  cell: (group) => grouped(pick(group)),
});

const estimate = (id: string, head: string, pick: (group: HealingGroupForFigure) => Limits): Column => ({
  id,
  head,
  unit: "",
  align: "end",
  cell: (group, unit) => value(pick(group).estimate, unit),
});

const interval = (id: string, under: string, head: string, pick: (group: HealingGroupForFigure) => readonly (number | null)[]): Column => ({
  id,
  under,
  head,
  unit: "",
  align: "end",
  cell: (group, unit) => spanText(pick(group), unit),
});

const limitsOf = ({ lower, upper }: Limits) => [lower, upper];

const columns: Column[] = [
  { id: "group", head: "Group", align: "start", cell: (group) => group.label },
  count("segments", "Segments", (group) => group.segments),
  count("patients", "Patients", (group) => group.patients),
  count("measured", "Healed", measuredIn),
  count("censored", "Not healed", (group) => group.censored ?? 0),
  count("ended", "Ended unhealed", (group) => group.ended ?? 0),
  count("excluded", "Left out", excludedIn),
  estimate("mean", "Mean", (group) => group.mean),
  interval("mean-interval", "mean", "95 % CI", (group) => limitsOf(group.mean)),
  { id: "deviation", head: "SD", unit: "", align: "end", cell: ({ deviation }, unit) => value(deviation, unit) },
  estimate("patient-mean", "Patient mean", (group) => group.patientMean),
  interval("patient-mean-interval", "patient-mean", "95 % CI", (group) => limitsOf(group.patientMean)),
  estimate("ratio-of-sums", "Ratio of sums", (group) => group.ratioOfSums),
  interval("ratio-of-sums-interval", "ratio-of-sums", "95 % CI", (group) => limitsOf(group.ratioOfSums)),
  estimate("median", "Median", (group) => group.median),
  interval("median-bounds", "median", "bounds", (group) => group.median.bounds),
  {
    id: "quartiles",
    head: "Quartiles",
    unit: "",
    align: "end",
    cell: ({ quartiles }, unit) => spanText([quartiles.lower, quartiles.upper], unit),
  },
];

/** Days at the cohort's median gain, with the unhealed in. */
function equalGainColumns(groups: readonly HealingGroupForFigure[]): Column[] {
  const gainMm = groups.find((group) => group.daysAtMedianGain)?.daysAtMedianGain?.gainMm;
  if (gainMm === undefined) return [];
  const days = (number: number | null | undefined) => (number === null || number === undefined ? none : decimals(number, 0));
  const common = { unit: "days", align: "end" } as const;
  return [
    { ...common, id: "equal-gain", head: `At ${decimals(gainMm, 0)} mm`, cell: ({ daysAtMedianGain: at }) => days(at?.days) },
    {
      ...common,
      id: "equal-gain-interval",
      under: "equal-gain",
      head: "95 % CI",
      cell: ({ daysAtMedianGain: at }) =>
        at?.lower === null || at === null || at === undefined ? none : `${days(at.lower)} to ${days(at.upper)}`,
    },
  ];
}

const filmColumn: Column = {
  id: "film-interval",
  head: "Film interval",
  unit: "days",
  align: "end",
  cell: (group) => (group.medianFilmIntervalDays === null ? none : decimals(group.medianFilmIntervalDays, 0)),
};

function value(number: number | null | undefined, unit: ClockUnit): string {
  return number === null || number === undefined ? none : indexText(number, unit);
}

/** `28.9 to 33.5`; an upper end that was never reached stands as a dash after *to*. */
function spanText([low, high]: readonly (number | null)[], unit: ClockUnit): string {
  const [from, to] = [value(low, unit), value(high, unit)];
  return from === none && to === none ? none : `${from} to ${to}`;
}
