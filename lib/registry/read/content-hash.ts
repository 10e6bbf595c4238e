import { createHash, type Hash } from "node:crypto";
import type { Connection } from "@/db/open";
import { type Field, fieldsOf, type TableName, tableNames } from "@/lib/codebook";
import { inView } from "../join/in-view";
import { type JoinView, joinViewAsOf } from "../join/join-view";
import { type OnPace, tickOf } from "../pace";
import { lineOf, lineSql } from "./line-sql";
import { columnsOfRow, fromAsOf, naturalOrder } from "./row-sql";

type Raw = readonly (string | number | null)[];
type Encode = (value: string | number) => string;

const enough = 1 << 16;

// texts need no escaping: every text column is held by its CHECK to letters, digits and hyphens
const quoted: Encode = (value) => `"${value}"`;
const flag: Encode = (value) => (value === 1 ? "true" : "false");
const number: Encode = String;

function encoderOf(field: Field): Encode {
  if (field.kind === "flag") return flag;
  return field.kind === "code" || field.kind === "keyed" || field.kind === "listed" ? quoted : number;
}

/** Writes a row as canonical JSON: fields in codebook order, blanks left out so that a field added later changes no old hash. */
function lineWriter(table: TableName): (row: Raw) => string {
  const fields = fieldsOf(table).map(([id, field]) => ({ name: `,"${id}":`, encode: encoderOf(field) }));
  const opening = `{"table":"${table}","row":{`;
  return (row) => {
    let line = "";
    for (const [i, { name, encode }] of fields.entries()) {
      const value = row[i];
      if (value !== null && value !== undefined) line += name + encode(value);
    }
    return `${opening}${line.slice(1)}}}\n`;
  };
}

type Asked = { readonly batch: number; readonly view: JoinView | null };

/** Lines of a table's rows as SQLite itself writes them. */
function* linesInSql(db: Connection, table: TableName, batch: number): Generator<string> {
  const lines = db.prepare(`SELECT ${lineSql(table)} ${fromAsOf(table)} ORDER BY ${naturalOrder(table)}`).pluck();
  for (const text of lines.iterate({ batch }) as Iterable<string>) yield lineOf(text);
}

/** Lines of a table's rows where some patients have several numbers, whose rows are merged cell by cell. */
function* linesInView(db: Connection, table: TableName, { batch, view }: Asked): Generator<string> {
  const rows = db.prepare(`SELECT ${columnsOfRow(table)} ${fromAsOf(table)} ORDER BY ${naturalOrder(table)}`).raw();
  const write = lineWriter(table);
  for (const row of inView(view, table, rows.iterate({ batch }) as Iterable<Raw>)) yield write(row);
}

function addTable(hash: Hash, lines: Iterable<string>, tick: () => void): void {
  let text = "";
  for (const line of lines) {
    tick();
    text += line;
    if (text.length > enough) {
      hash.update(text);
      text = "";
    }
  }
  hash.update(text);
}

function rowsIn(db: Connection, table: TableName, batch: number): number {
  return Number(
    db
      .prepare(`SELECT count(*) ${fromAsOf(table)}`)
      .pluck()
      .get({ batch }),
  );
}

/**
 * SHA-256 of what the registry held as of a batch: tables in codebook order, rows in the order of their natural keys, one line of
 * canonical JSON each, `{"table":"score","row":{"person":"…","scoreCode":"…","scoreDay":12,"scoreValue":80}}`. Numbers of identities
 * and batches are no part of it, so the same cases give the same hash however they came in. A patient with several numbers stands once,
 * under the first.
 */
export function hashAsOf(db: Connection, batch: number, onPace?: OnPace): string {
  const hash = createHash("sha256");
  const asked = { batch, view: joinViewAsOf(db, batch) };
  const tick = tickOf(onPace, "seal", () => tableNames.reduce((sum, table) => sum + rowsIn(db, table, batch), 0));
  for (const table of tableNames) addTable(hash, asked.view === null ? linesInSql(db, table, batch) : linesInView(db, table, asked), tick);
  return hash.digest("hex");
}
