import { type Field, fieldsOf, type TableName, tables } from "@/lib/codebook";

/** A value as SQLite holds it: a flag is 1 or 0. */
export type Cell = string | number | null;
/** A row as cells, in codebook order. */
export type Cells = readonly Cell[];

/** Where the parts of a row of a table stand among its cells. */
export type Layout = {
  readonly table: TableName;
  readonly fields: readonly (readonly [id: string, field: Field])[];
  /** Places of the natural key, in the key's order. */
  readonly key: readonly number[];
  /** Places of the other fields, in codebook order. */
  readonly versioned: readonly number[];
};

export function layoutOf(table: TableName): Layout {
  const fields = fieldsOf(table);
  const place = new Map(fields.map(([id], i) => [id, i]));
  const key = tables[table].key.map((id) => placeIn(place, id));
  return { table, fields, key, versioned: fields.flatMap((_, i) => (key.includes(i) ? [] : [i])) };
}

function placeIn(place: ReadonlyMap<string, number>, id: string): number {
  const found = place.get(id);
  if (found === undefined) throw new RangeError(`layoutOf requires a key of declared fields, received ${id}`);
  return found;
}

/** What isn't in the row is not recorded. A value of a wrong kind that SQLite can hold is left for the table to refuse by name. */
function cellOf(value: unknown): Cell {
  if (value === null || value === undefined) return null;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (typeof value === "string") return value;
  if (typeof value === "number" && !Number.isNaN(value)) return value;
  throw new TypeError(
    `commit requires cells that are texts, numbers, flags or blank, received ${Number.isNaN(value) ? "NaN" : typeof value}`,
  );
}

/** The cells of a row: codebook fields and nothing else, whatever else the row carries. */
export function cellsOf(layout: Layout, row: Readonly<Record<string, unknown>>): Cell[] {
  return layout.fields.map(([id]) => cellOf(row[id]));
}

/** The natural key of a row as one text. No value of a key holds the bar. */
export function keyText({ key, fields }: Layout, row: Readonly<Record<string, unknown>>): string {
  let text = "";
  for (const place of key) {
    const id = fields[place]?.[0] ?? "";
    text += `|${cellOf(row[id]) ?? ""}`;
  }
  return text;
}
