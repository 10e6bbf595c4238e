import type { Field, RowOf, Table, TableName } from "./field";
import { bodyMeasure } from "./tables/body-measure";
import { event } from "./tables/event";
import { person } from "./tables/person";
import { score } from "./tables/score";
import { segment } from "./tables/segment";
import { visit } from "./tables/visit";

/** Every table, in codebook order: the order of templates, of the content hash and of the page of the docs. */
export const tables = { person, bodyMeasure, segment, visit, event, score } as const satisfies Record<TableName, Table>;
export const tableNames = Object.keys(tables) as readonly TableName[];

/** Something for each table. */
export function byTable<T>(make: (table: TableName) => T): Record<TableName, T> {
  return Object.fromEntries(tableNames.map((table) => [table, make(table)])) as Record<TableName, T>;
}

export type PersonRow = RowOf<typeof person>;
export type BodyMeasureRow = RowOf<typeof bodyMeasure>;
export type SegmentRow = RowOf<typeof segment>;
export type VisitRow = RowOf<typeof visit>;
export type EventRow = RowOf<typeof event>;
export type ScoreRow = RowOf<typeof score>;
export type Rows = {
  person: PersonRow;
  bodyMeasure: BodyMeasureRow;
  segment: SegmentRow;
  visit: VisitRow;
  event: EventRow;
  score: ScoreRow;
};

/** Fields of a table with their ids, in codebook order. */
export function fieldsOf(table: TableName): readonly (readonly [id: string, field: Field])[] {
  return Object.entries(tables[table].fields);
}

/** @throws RangeError when the table has no such field */
export function fieldOf(table: TableName, id: string): Field {
  const field = (tables[table].fields as Readonly<Record<string, Field>>)[id];
  if (!field) throw new RangeError(`fieldOf requires a field of ${table}, received ${id}`);
  return field;
}

/** Fields outside the natural key, in codebook order: those that a version of a row holds. */
export function versionedFieldsOf(table: TableName): readonly (readonly [id: string, field: Field])[] {
  const key: readonly string[] = tables[table].key;
  return fieldsOf(table).filter(([id]) => !key.includes(id));
}

/** Template name of a table (`template body-measures`). */
export const templateNames = {
  persons: "person",
  "body-measures": "bodyMeasure",
  segments: "segment",
  visits: "visit",
  events: "event",
  scores: "score",
} as const satisfies Record<string, TableName>;
export type TemplateName = keyof typeof templateNames;
