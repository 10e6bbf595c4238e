import { expect, test } from "vitest";
import { type TableName, tableNames, tables } from "@/lib/codebook";
import { keyRing, makeUnitKey, type Prepared, prepare, readFile, type StrippedRows } from "@/lib/intake";
import { bytesOf, jsonOf } from "./read";

const scores = (jsonOf("settings.json") as { scores: { code: string }[] }).scores.map(({ code }) => code);
const ring = keyRing(makeUnitKey((length) => new Uint8Array(length).fill(7)));
const files = ["persons", "body-measures", "segments", "visits", "events", "scores"].map((name) => `tables/${name}.csv`);

async function bring(names: readonly string[], held: StrippedRows | null = null): Promise<Prepared> {
  const read = await Promise.all(names.map((file) => readFile(new Uint8Array(bytesOf(file)), { file })));
  const sheets = read.flatMap((file) => file.sheets);
  return prepare({ sheets, ring, today: { year: 2025, month: 4, day: 7 }, scores, held });
}

type Row = Readonly<Record<string, unknown>>;
const keyOf = (table: TableName, row: Row) => tables[table].key.map((field) => String(row[field] ?? "")).join("|");

/** What a registry holds after a batch: a value that differs is the newer word, a blank changes nothing. */
function merged(held: StrippedRows, brought: StrippedRows): StrippedRows {
  const join = (table: TableName) => {
    const rows = new Map<string, Row>(held[table].map((row) => [keyOf(table, row), row]));
    for (const row of brought[table]) {
      const filled = Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null));
      rows.set(keyOf(table, row), { ...row, ...rows.get(keyOf(table, row)), ...filled });
    }
    return [...rows.values()];
  };
  return Object.fromEntries(tableNames.map((table) => [table, join(table)])) as unknown as StrippedRows;
}

const nothing = Object.fromEntries(tableNames.map((table) => [table, []])) as unknown as StrippedRows;
const sorted = (rows: StrippedRows) =>
  tableNames.map((table) => rows[table].map((row) => JSON.stringify(Object.entries(row).sort())).sort());

test("six sheets, one a table: all at once, one by one, and one by one the other way round give the same rows", async () => {
  const atOnce = await bring(files);
  expect(atOnce.refused).toEqual([]);
  expect(atOnce.counts.made).toMatchObject({ person: 260, segment: 480, visit: 5609, score: 1216, bodyMeasure: 554, event: 309 });
  const wanted = sorted(atOnce.rows);
  for (const order of [files, [...files].reverse()]) {
    let held = nothing;
    for (const file of order) held = merged(held, (await bring([file], held)).rows);
    expect(sorted(held)).toEqual(wanted);
  }
});
