import { fieldsOf, type Value } from "@/lib/codebook";
import { canonicalWhere, fieldsNamed, matches, type Where } from "@/lib/cohorts";
import type { Registry, State } from "@/lib/registry";
import { caseFields } from "../frames/base-cases";
import { dataTo } from "../frames/data-to";
import { columnOf, valueAt } from "../frames/read";
import { stateAsOf } from "../question/state";
import { type Book, bookOf } from "./book";
import { type Cells, cellsOf } from "./cells";
import { type CasebookColumn, casebookColumn, usualColumns } from "./columns";
import { casebookList, listTest } from "./lists";
import { searchOf } from "./search";
import { sortRows } from "./sort";

export type CasebookQuestion = {
  readonly where?: Where;
  /** Words that must all stand in a row: the case's number, a year, or the beginnings of recorded codes. */
  readonly search?: string;
  /** A list that the clerk works through. */
  readonly list?: string;
  readonly columns?: readonly string[];
  /** A column's id, or `case`. */
  readonly sort?: string;
  readonly descending?: boolean;
  /** The window of rows: from which (0 = the first), and at most how many. */
  readonly from?: number;
  readonly limit?: number;
  readonly asOf?: number;
};

/** A segment with its person's number. Days are days from its surgery. */
export type CasebookRow = { readonly case: number; readonly segment: number; readonly values: Readonly<Record<string, Value>> };
export type CasebookAnswer = {
  readonly batch: number;
  readonly dataTo: string | null;
  readonly where: unknown;
  readonly columns: readonly CasebookColumn[];
  /** Segments and persons in the list, and segments held in all. */
  readonly segments: number;
  readonly cases: number;
  readonly held: number;
  readonly from: number;
  readonly rows: readonly CasebookRow[];
  /** The number of every case of the list, window or not, each once. */
  readonly caseNumbers: readonly number[];
  /** The day of the last file brought in, as days since 1970: up to it the lists of what is missing reckon. */
  readonly closing: number | null;
};

/**
 * The casebook: the segments held, those that a question names, a window of them with the columns chosen.
 * @throws RangeError for a column, list or batch that isn't known
 */
export async function casebook(registry: Registry, asked: CasebookQuestion = {}): Promise<CasebookAnswer> {
  const columns = columnsAsked(asked);
  const state = await stateAsOf(registry, asked.asOf);
  await readAtOnce(registry, state, columns);
  const book = await bookOf(registry, state);
  const found = await rowsFound(registry, book, asked);
  const sorted = await sortRows(registry, book, found, sortAsked(asked), asked.descending ?? false);
  const from = Math.min(Math.max(0, asked.from ?? 0), sorted.length);
  const cells = await Promise.all(columns.map(async (column) => [column.id, await cellsOf(registry, book, column)] as const));
  const caseNumbers = [...new Set(found.map((row) => book.cases[row] as number))];
  return {
    batch: state.batch,
    dataTo: await dataTo(registry, state),
    where: JSON.parse(canonicalWhere(asked.where ?? {})),
    columns,
    segments: found.length,
    cases: caseNumbers.length,
    held: book.length,
    from,
    rows: sorted.slice(from, asked.limit === undefined ? undefined : from + asked.limit).map((row) => rowOf(book, cells, row)),
    caseNumbers,
    closing: book.closing,
  };
}

/** Reads the fields of columns in one walk over each table: frames keep what they read, and a walk a column is what a first page would wait for. */
async function readAtOnce(registry: Registry, state: State, columns: readonly CasebookColumn[]): Promise<void> {
  for (const table of ["segment", "person"] as const) {
    const fields = columns.flatMap(({ from }) => ("table" in from && from.table === table ? [from.field] : []));
    await registry.frameAsOf(state, table, [...fields, ...alwaysRead[table]]);
  }
}

/** What the book reads, whatever the columns. */
const alwaysRead = {
  segment: [...caseFields, "arrangement", "surgeryYear", "surgeryQuarter", "surgeon"],
  person: ["followUpStatus", "followUpStatusDay", "line"],
} as const;

function columnsAsked({ columns, list }: CasebookQuestion): readonly CasebookColumn[] {
  const ids = columns ?? (list === undefined ? undefined : casebookList(list)?.columns) ?? usualColumns;
  return ids.map((id) => {
    const column = casebookColumn(id);
    if (!column) throw new RangeError("casebook requires columns that it has, received another word");
    return column;
  });
}

function sortAsked({ sort }: CasebookQuestion): CasebookColumn | null {
  if (sort === undefined || sort === "case") return null;
  const column = casebookColumn(sort);
  if (!column) throw new RangeError("casebook requires a column of its own to sort by, received another word");
  return column;
}

async function rowsFound(registry: Registry, book: Book, { where = {}, search = "", list }: CasebookQuestion): Promise<number[]> {
  const tests = [
    await searchOf(registry, book, search),
    ...(list === undefined ? [] : [await listTest(registry, book, list)]),
    ...(Object.keys(where).length === 0 ? [] : [await whereTest(registry, book, where)]),
  ];
  const found: number[] = [];
  for (let row = 0; row < book.length; row++) if (tests.every((test) => test(row))) found.push(row);
  return found;
}

const personFields: ReadonlySet<string> = new Set(fieldsOf("person").map(([id]) => id));

async function whereTest(registry: Registry, book: Book, where: Where): Promise<(row: number) => boolean> {
  const named = [...fieldsNamed(where)];
  const segments = await registry.frameAsOf(
    book.state,
    "segment",
    named.filter((id) => !personFields.has(id)),
  );
  const persons = await registry.frameAsOf(
    book.state,
    "person",
    named.filter((id) => personFields.has(id)),
  );
  return (row) =>
    matches(where, (id) =>
      personFields.has(id) ? valueAt(columnOf(persons, id), book.personRow[row] ?? -1) : valueAt(columnOf(segments, id), row),
    );
}

function rowOf(book: Book, cells: readonly (readonly [string, Cells])[], row: number): CasebookRow {
  const values = Object.fromEntries(cells.map(([id, read]) => [id, read(row)]));
  return { case: book.cases[row] as number, segment: book.segments[row] as number, values };
}
