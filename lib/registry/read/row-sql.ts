import { identities, identityTable, versionTable } from "@/db/identities";
import { fieldsOf, snake, type TableName, tables } from "@/lib/codebook";

// Aliases in every statement: i = identities of the table, v = its versions, p = the person's identity, s = the segment's.

/** Identities of a table joined with those of its parents. CROSS JOIN keeps SQLite to this order, which is that of the natural key. */
const sources: Readonly<Record<TableName, string>> = {
  person: "person_id i",
  bodyMeasure: "person_id p CROSS JOIN body_measure_id i ON i.person_entity = p.entity",
  segment: "person_id p CROSS JOIN segment_id i ON i.person_entity = p.entity",
  visit: "person_id p CROSS JOIN segment_id s ON s.person_entity = p.entity CROSS JOIN visit_id i ON i.segment_entity = s.entity",
  event: "person_id p CROSS JOIN event_id i ON i.person_entity = p.entity LEFT JOIN segment_id s ON s.entity = i.segment_entity",
  score: "person_id p CROSS JOIN score_id i ON i.person_entity = p.entity",
};

/** Where a field's column stands in those statements. */
export function columnOf(table: TableName, id: string): string {
  const own: readonly string[] = identities[table].own;
  const key: readonly string[] = tables[table].key;
  if (own.includes(id)) return `i.${snake(id)}`;
  if (id === "person") return "p.person";
  return `${key.includes(id) ? "s" : "v"}.${snake(id)}`;
}

/** Where the segment's entity stands, of the tables whose rows have one. */
export const segmentColumn: Readonly<Partial<Record<TableName, string>>> = { segment: "i.entity", visit: "s.entity", event: "s.entity" };

/** Every field of a table, in codebook order. */
export function columnsOfRow(table: TableName): string {
  return fieldsOf(table)
    .map(([id]) => columnOf(table, id))
    .join(", ");
}

/** `FROM …` of the rows of a table that held as of `@batch`. */
export function fromAsOf(table: TableName): string {
  const versions = `CROSS JOIN ${versionTable(table)} v ON v.entity = i.entity AND v.since_batch <= @batch AND @batch < v.until_batch`;
  return `FROM ${sources[table]} ${versions}`;
}

/** `FROM …` of every version of the rows of one person, `@person` being its entity. */
export function fromVersionsOf(table: TableName): string {
  const person = table === "person" ? "i.entity" : "p.entity";
  return `FROM ${sources[table]} CROSS JOIN ${versionTable(table)} v ON v.entity = i.entity WHERE ${person} = @person`;
}

/** The person's natural key, whichever the table. */
export function personColumn(table: TableName): string {
  return columnOf(table, "person");
}

export function naturalOrder(table: TableName): string {
  return tables[table].key.map((id) => columnOf(table, id)).join(", ");
}

const heldParent = (table: "person" | "segment", entity: string) =>
  `EXISTS (SELECT 1 FROM ${versionTable(table)} h WHERE h.entity = ${entity} AND h.since_batch <= @batch AND @batch < h.until_batch)`;

/** Whether a row's person and segment held too as of `@batch`. A row may come before theirs, and waits for it. */
export function parentsHeld(table: TableName): string {
  if (table === "person") return "1";
  const person = heldParent("person", "p.entity");
  if (table === "visit") return `${person} AND ${heldParent("segment", "s.entity")}`;
  return table === "event" ? `${person} AND (i.segment_entity IS NULL OR ${heldParent("segment", "i.segment_entity")})` : person;
}

/** Identities of a table with their parents', found by their own number. */
function identified(table: TableName): string {
  if (table === "person") return `${identityTable(table)} i`;
  const segment = table === "visit" ? " JOIN segment_id s ON s.entity = i.segment_entity" : "";
  const person = table === "visit" ? "s.person_entity" : "i.person_entity";
  const bone = table === "event" ? " LEFT JOIN segment_id s ON s.entity = i.segment_entity" : "";
  return `${identityTable(table)} i${segment} JOIN person_id p ON p.entity = ${person}${bone}`;
}

/** The natural key of a row and its person's entity, `?` being the row's. */
export function keyOfRow(table: TableName): string {
  const person = table === "person" ? "i.entity" : "p.entity";
  return `SELECT ${person}, ${naturalOrder(table)} FROM ${identified(table)} WHERE i.entity = ?`;
}

/** `FROM …` of rows as of `@batch` by number of identity rather than by natural key: frames keep this order, which no later batch disturbs. */
export function fromByEntity(table: TableName): string {
  return `FROM ${identified(table)} JOIN ${versionTable(table)} v ON v.entity = i.entity AND v.since_batch <= @batch AND @batch < v.until_batch`;
}

/** Rows of a frame: those that held as of `@batch` with everything above them. A visit without its segment is no part of any figure. */
export function fromStanding(table: TableName): string {
  return `${fromByEntity(table)} WHERE ${parentsHeld(table)}`;
}
