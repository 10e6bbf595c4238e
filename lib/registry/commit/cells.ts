import { type Field, fieldsOf, type TableName, tables } from "@/lib/codebook";

/** A value as SQLite holds it: a flag is 1 or 0. */
export type Cell = string | number | null;
/** A row as cells, in codebook order. */
export type Cells = readonly Cell[];

/** Where the parts of a row of a table stand among its cells. */
export type Layout = {
  readonly table: TableName;
  readonly fields: readonly (readonly [id: string, field: Field])[];
  readonly ids: readonly string[];
  /** Fields of the natural key and their places, in the key's order. */
  readonly keyIds: readonly string[];
  readonly key: readonly number[];
  /** Places of the other fields, in codebook order. */
  readonly versioned: readonly number[];
};

const layouts = new Map<TableName, Layout>();

/** The layout of a table, made once. */
export function layoutOf(table: TableName): Layout {
  const known = layouts.get(table);
  if (known) return known;
  const made = makeLayout(table);
  layouts.set(table, made);
  return made;
}

function makeLayout(table: TableName): Layout {
  const fields = fieldsOf(table);
  const place = new Map(fields.map(([id], i) => [id, i]));
  const key = tables[table].key.map((id) => placeIn(place, id));
  const versioned = fields.flatMap((_, i) => (key.includes(i) ? [] : [i]));
  return { table, fields, ids: fields.map(([id]) => id), keyIds: tables[table].key, key, versioned };
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
  const { ids } = layout;
  const cells: Cell[] = [];
  for (let i = 0; i < ids.length; i++) cells.push(cellOf(row[ids[i] as string]));
  return cells;
}

/** The cells of a row that its version holds. Where the key stands first, as in every table of today, they are one slice. */
export function versionedOf({ versioned, fields }: Layout, cells: Cells): Cells {
  const [first = 0] = versioned;
  return first + versioned.length === fields.length ? cells.slice(first) : versioned.map((place) => cells[place] ?? null);
}

/** The natural key of a row as one text: a person's name as it is, and what comes after it behind bars, which no value of a key holds. */
export function keyText({ keyIds }: Layout, row: Readonly<Record<string, unknown>>): string {
  let text = String(row[keyIds[0] ?? ""] ?? "");
  for (let i = 1; i < keyIds.length; i++) text += `|${cellOf(row[keyIds[i] ?? ""]) ?? ""}`;
  return text;
}
