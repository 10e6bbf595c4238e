import type { Connection } from "@/db/open";
import { type Field, fieldsOf, type Rows, type TableName, tableNames, type Value } from "@/lib/codebook";
import type { Stripped } from "@/lib/intake";
import { inView } from "../join/in-view";
import { joinViewAsOf } from "../join/join-view";
import { columnsOfRow, fromAsOf, naturalOrder, personColumn } from "./row-sql";

/** A row that the registry holds, with its table. Switching on `table` tells the row's type. */
export type HeldRow = { [T in TableName]: { readonly table: T; readonly row: Stripped<T> } }[TableName];

/** Persons read at once. Between two pages other work goes on, and no page is ever large. */
const personsAPage = 500;

export const valueOfCell = (field: Field, cell: string | number | null): Value =>
  field.kind === "flag" && cell !== null ? cell === 1 : cell;

/** Makes a row of the cells of a table's columns in codebook order. */
export function rowMaker<T extends TableName>(table: T): (cells: readonly (string | number | null)[]) => Stripped<T> {
  const fields = fieldsOf(table);
  // rows of the registry came in stripped, and nothing else was ever written to it
  return (cells) =>
    Object.fromEntries(fields.map(([id, field], i) => [id, valueOfCell(field, cells[i] ?? null)])) as Rows[T] as Stripped<T>;
}

/** The last person of each page, in the order of their pseudonyms. */
function pageEnds(db: Connection): { readonly next: (after: string) => string | undefined } {
  const find = db.prepare("SELECT max(person) FROM (SELECT person FROM person_id WHERE person > ? ORDER BY person LIMIT ?)");
  return { next: (after) => (find.pluck().get(after, personsAPage) as string | null) ?? undefined };
}

type Cells = readonly (string | number | null)[];

/** Cells of a table's rows, a page of persons at a time. */
function* cellsOfTable(db: Connection, table: TableName, batch: number): Generator<Cells> {
  const person = personColumn(table);
  const page = db
    .prepare(
      `SELECT ${columnsOfRow(table)} ${fromAsOf(table)} WHERE ${person} > @after AND ${person} <= @upTo ORDER BY ${naturalOrder(table)}`,
    )
    .raw();
  const ends = pageEnds(db);
  let after = "";
  for (let upTo = ends.next(after); upTo !== undefined; upTo = ends.next(after)) {
    yield* page.all({ batch, after, upTo }) as Cells[];
    after = upTo;
  }
}

/** Every row that held as of a batch, tables in codebook order, rows in that of their natural keys. */
export function* rowsAsOf(db: Connection, batch: number): Generator<HeldRow> {
  const view = joinViewAsOf(db, batch);
  for (const table of tableNames) {
    const make = rowMaker(table);
    for (const cells of inView(view, table, cellsOfTable(db, table, batch))) yield { table, row: make(cells) } as HeldRow;
  }
}
