import { type Field, fieldsOf, type TableName } from "@/lib/codebook";
import { columnOf } from "./row-sql";

// Cells become text inside SQLite: handing a hundred cells a row over to JavaScript costs more than all else that a content hash does.

/** Stands about a number that SQLite's text would not bring back: its 17 digits bring it back, and JavaScript writes it. */
const mark = "\u0001";
const marked = new RegExp(`${mark}([^${mark}]*)${mark}`, "g");

/**
 * A number as JavaScript writes it: whole ones without a point, others by the fewest digits that bring the number back, which are SQLite's
 * wherever it needs 15 or fewer. Very small and large ones have exponents, of another form in each.
 */
export function numberText(column: string): string {
  const text = `CAST(${column} AS TEXT)`;
  const plain = `abs(${column}) BETWEEN 1e-3 AND 1e14 AND length(${text}) <= 16 AND CAST(${text} AS REAL) = ${column}`;
  return `CASE WHEN ${column} = CAST(${column} AS INTEGER) AND abs(${column}) < 1e15 THEN CAST(${column} AS INTEGER)
    WHEN ${plain} THEN ${column} WHEN ${column} IS NOT NULL THEN char(1) || printf('%!.17g', ${column}) || char(1) END`;
}

/** SQL of `,"gainMm":48.5`, NULL where nothing is recorded. Texts need no escaping: their CHECK keeps them to letters, digits and hyphens. */
function fieldText(column: string, id: string, { kind }: Field): string {
  const name = `,"${id}":`;
  if (kind === "flag") return `CASE ${column} WHEN 1 THEN '${name}true' WHEN 0 THEN '${name}false' END`;
  if (kind === "number") return `'${name}' || ${numberText(column)}`;
  return kind === "day" || kind === "count" ? `'${name}' || ${column}` : `'${name}"' || ${column} || '"'`;
}

/**
 * SQL of a row of a table as a line of canonical JSON, over the statements of `row-sql`. Its person stands first in every row; what
 * `lineOf` has still to write is marked.
 */
export function lineSql(table: TableName): string {
  const [person, ...fields] = fieldsOf(table);
  if (person?.[0] !== "person") throw new RangeError(`lineSql requires a table whose first field is its person, received ${table}`);
  const texts = fields.map(([id, field]) => fieldText(columnOf(table, id), id, field));
  // a function of SQLite takes no more than 127 values
  const halves = [texts.slice(0, 100), texts.slice(100)].filter((half) => half.length > 0).map((half) => `concat(${half.join(", ")})`);
  return `'{"table":"${table}","row":{"person":"' || ${columnOf(table, "person")} || '"' || ${halves.join(" || ")} || '}}' || char(10)`;
}

/** A line as `lineSql` gave it, its marked numbers written. */
export function lineOf(text: string): string {
  return text.includes(mark) ? text.replaceAll(marked, (_, digits: string) => String(Number(digits))) : text;
}
