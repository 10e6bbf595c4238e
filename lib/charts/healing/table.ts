import { decimals } from "../say/numbers";
import { type ClockUnit, indexText } from "../say/units";
import { excludedIn, type HealingGroupForFigure, type HealingRecordForFigure, isHealing, type Limits, measuredIn } from "./record";

export type DataTable = {
  readonly columns: readonly { readonly id: string; readonly head: string; readonly unit?: string; readonly align: "start" | "end" }[];
  /** One cell a column, as written; `–` where there is no value. */
  readonly rows: readonly (readonly string[])[];
};

type Column = DataTable["columns"][number] & { readonly cell: (group: HealingGroupForFigure, unit: ClockUnit) => string };

const none = "–";

/** The figure's numbers as a table: one row a group, units once in the heads. */
export function tableOf(record: HealingRecordForFigure, unit: ClockUnit = "days/cm"): DataTable {
  const columns = columnsFor(record);
  return {
    columns: columns.map(({ id, head, align, unit: own }) => ({
      id,
      head,
      align,
      ...(own === undefined ? {} : { unit: own === "" ? unit : own }),
    })),
    rows: record.groups.map((group) => columns.map((column) => column.cell(group, unit))),
  };
}

function columnsFor({ groups }: HealingRecordForFigure): Column[] {
  const films = groups.some((group) => group.medianFilmIntervalDays !== null);
  const healing = groups.length === 0 || groups.some(isHealing);
  const own = healing ? columns : columns.filter(({ id }) => id !== "censored" && id !== "ended").map(renamed);
  return films ? [...own, filmColumn] : own;
}

/** A clock that doesn't end at consolidation measures; nothing heals under it. */
function renamed(column: Column): Column {
  return column.id === "measured" ? { ...column, head: "Measured" } : column;
}

const count = (id: string, head: string, pick: (group: HealingGroupForFigure) => number): Column => ({
  id,
  head,
  align: "end",
  cell: (group) => String(pick(group)),
});

const estimate = (id: string, head: string, pick: (group: HealingGroupForFigure) => Limits): Column => ({
  id,
  head,
  unit: "",
  align: "end",
  cell: (group, unit) => value(pick(group).estimate, unit),
});

const interval = (id: string, head: string, pick: (group: HealingGroupForFigure) => readonly (number | null)[]): Column => ({
  id,
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
  interval("mean-interval", "95 % CI", (group) => limitsOf(group.mean)),
  estimate("patient-mean", "Patient mean", (group) => group.patientMean),
  interval("patient-mean-interval", "95 % CI", (group) => limitsOf(group.patientMean)),
  estimate("ratio-of-sums", "Ratio of sums", (group) => group.ratioOfSums),
  interval("ratio-of-sums-interval", "95 % CI", (group) => limitsOf(group.ratioOfSums)),
  estimate("median", "Median", (group) => group.median),
  interval("median-bounds", "Bounds", (group) => group.median.bounds),
  interval("quartiles", "Quartiles", (group) => [group.quartiles.lower, group.quartiles.upper]),
];

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
