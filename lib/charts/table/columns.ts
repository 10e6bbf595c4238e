import type { Limits } from "../figure/source";
import { grouped } from "../say/numbers";
import { type ShownUnit, shownText } from "../say/shown-unit";
import { type DataTable, noValue, type TableColumn } from "./data-table";

/** A column that knows its cell. */
export type Column<Row> = TableColumn & { readonly cell: (row: Row) => string };

/** Columns over rows, written out. */
export function tableFrom<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): DataTable {
  return {
    columns: columns.map(({ cell: _, ...column }) => column),
    rows: rows.map((row) => columns.map((column) => column.cell(row))),
  };
}

export function words<Row>(id: string, head: string, cell: (row: Row) => string): Column<Row> {
  return { id, head, align: "start", cell };
}

export function count<Row>(id: string, head: string, pick: (row: Row) => number | null | undefined): Column<Row> {
  const written = (n: number | null | undefined) => (n === null || n === undefined ? noValue : grouped(n));
  return { id, head, align: "end", cell: (row) => written(pick(row)) };
}

/** An estimate and, under it, its interval. */
export function estimate<Row>(
  id: string,
  head: string,
  unit: ShownUnit,
  pick: (row: Row) => Limits | null | undefined,
): readonly [Column<Row>, Column<Row>] {
  return [
    number(id, head, unit, (row) => pick(row)?.estimate),
    { ...span(`${id}-interval`, "95 % CI", unit, (row) => spanOf(pick(row))), under: id },
  ];
}

export function number<Row>(id: string, head: string, unit: ShownUnit, pick: (row: Row) => number | null | undefined): Column<Row> {
  return { id, head, ...named(unit), align: "end", cell: (row) => shownOr(pick(row), unit) };
}

type Span = readonly [low: number | null, high: number | null];

/** `28.9 to 33.5`; an end that was never reached stands as a dash. */
export function span<Row>(id: string, head: string, unit: ShownUnit, pick: (row: Row) => Span): Column<Row> {
  return { id, head, ...named(unit), align: "end", cell: (row) => spanText(pick(row).map((end) => shownOr(end, unit))) };
}

function spanText([low = noValue, high = noValue]: readonly string[]): string {
  return low === noValue && high === noValue ? noValue : `${low} to ${high}`;
}

const spanOf = (limits: Limits | null | undefined): Span => [limits?.lower ?? null, limits?.upper ?? null];
const shownOr = (value: number | null | undefined, unit: ShownUnit) =>
  value === null || value === undefined ? noValue : shownText(value, unit);
const named = ({ name }: ShownUnit) => (name === "ratio" || name === "" ? {} : { unit: name });
