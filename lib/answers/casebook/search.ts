import { type CodeField, canBeFound, fieldsOf, fold, healingStatuses, labelOfCode, wordsOfSearch } from "@/lib/codebook";
import type { Registry } from "@/lib/registry";
import { columnOf } from "../frames/read";
import { stateAsOf } from "../question/state";
import { type Book, bookOf } from "./book";
import { surgeonCodes } from "./surgeons";

type Test = (row: number) => boolean;
type Table = "person" | "segment";

/** The highest number of a case with a segment; 0 when there is none. */
export async function highestCase(registry: Registry, asOf?: number): Promise<number> {
  return highestOf(await bookOf(registry, await stateAsOf(registry, asOf)));
}

const highestOf = ({ cases }: Book) => cases.reduce((highest, number) => Math.max(highest, number), 0);

/**
 * Rows in which every word of the search stands: a number is a case's number or a year of surgery, `s2` a surgeon, any other word the
 * beginning of a word among the codes recorded, or of a flag that is set. Blank: every row.
 * @throws RangeError for a word that can stand in no case, a name for instance
 */
export async function searchOf(registry: Registry, book: Book, search: string): Promise<Test> {
  if (!canBeFound(search, highestOf(book)))
    throw new RangeError("casebook requires a search by numbers of cases, years, surgeons' codes or recorded words, received another");
  const tests = await Promise.all(wordsOfSearch(search).map((word) => testOf(registry, book, word)));
  return (row) => tests.every((test) => test(row));
}

async function testOf(registry: Registry, book: Book, word: string): Promise<Test> {
  const segments = await registry.frameAsOf(book.state, "segment", ["surgeryYear", "surgeon"]);
  if (/^\d+$/.test(word)) {
    const [number, year] = [Number(word), columnOf(segments, "surgeryYear")];
    return (row) => book.cases[row] === number || (year.kind === "number" && year.values[row] === number);
  }
  if (/^s\d+$/.test(word)) {
    const codeOf = surgeonCodes(segments);
    return (row) => codeOf(row)?.toLowerCase() === word;
  }
  const tests = [
    statusTest(book, word),
    ...(await fieldTests(registry, book, "segment", word)),
    ...(await fieldTests(registry, book, "person", word)),
  ];
  return (row) => tests.some((test) => test(row));
}

/** Whether a word of the text begins so. */
function begins(text: string, word: string): boolean {
  return fold(text)
    .split(" ")
    .some((part) => part.startsWith(word));
}

function statusTest(book: Book, word: string): Test {
  const hits = healingStatuses.map((status) => begins(labelOfCode(status), word));
  return (row) => hits[book.worked.healingStatus[row] ?? -1] === true;
}

async function fieldTests(registry: Registry, book: Book, table: Table, word: string): Promise<Test[]> {
  const codes = fieldsOf(table).flatMap(([id, field]) => {
    if (field.kind !== "code") return [];
    const hits = hitsOf(field, word);
    return hits.some(Boolean) ? [{ id, hits }] : [];
  });
  const flags = fieldsOf(table).filter(([, field]) => field.kind === "flag" && begins(field.label, word));
  const frame = await registry.frameAsOf(book.state, table, [...codes.map(({ id }) => id), ...flags.map(([id]) => id)]);
  const rowIn = table === "segment" ? (row: number) => row : (row: number) => book.personRow[row] ?? -1;
  const codeTests = codes.map(({ id, hits }): Test => {
    const column = columnOf(frame, id);
    return (row) => column.kind === "code" && hits[column.values[rowIn(row)] ?? -1] === true;
  });
  const flagTests = flags.map(([id]): Test => {
    const column = columnOf(frame, id);
    return (row) => column.kind === "flag" && column.values[rowIn(row)] === 1;
  });
  return [...codeTests, ...flagTests];
}

function hitsOf(field: CodeField, word: string): readonly boolean[] {
  return field.codes.map((code) => begins(labelOfCode(code), word));
}
