import type { DataTable } from "@/lib/charts";
import type { Told } from "@/lib/reports";
import { tableText } from "./table-text";

/** A place as data: its figures by their numbers. */
export function toldAsData({ figures, ...told }: Told) {
  return { ...told, figures: figures.map(({ id, units, table }) => ({ id, units, table: table() })) };
}

/** A place as a person reads it on a terminal. */
export function textOfTold(told: Told): string {
  const figures = told.figures.map(({ table }) => textOfTable(table()));
  const tables = told.tables.map(({ caption, table }) => `${caption}\n\n${textOfTable(table)}`);
  const references = told.references.map(({ of, stamp }) => `${stamp} (${of})`).join(", ");
  return [
    ...told.sentences,
    ...told.cautions,
    ...figures.flatMap((text) => ["", text]),
    ...tables.flatMap((text) => ["", text]),
    "",
    ...told.leftOut.map(({ label, text }) => `Left out of ${label}: ${text}.`),
    ...told.notes,
    `Result references ${references}; batch ${told.batch}.`,
  ].join("\n");
}

function textOfTable({ columns, rows }: DataTable): string {
  return tableText(
    columns.map(({ head, unit }) => (unit === undefined ? head : `${head} (${unit})`)),
    rows,
  );
}
