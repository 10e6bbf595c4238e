import { eq, getTableColumns, getTableName, is } from "drizzle-orm";
import { drizzle } from "drizzle-orm/better-sqlite3";
import { SQLiteTable, sqliteTable } from "drizzle-orm/sqlite-core";
import { describe, expect, expectTypeOf, test } from "vitest";
import { columnsOf } from "@/db/columns";
import * as schema from "@/db/schema";
import { fieldsOf, type Rows, snake, type TableName, tableNames, tables, versionedFieldsOf } from "@/lib/codebook";
import { memory } from "./memory";

type Versions<T> = Omit<T, "entity" | "sinceBatch" | "untilBatch">;

test("what drizzle infers from the columns of a table is the codebook's row", () => {
  const whole = {
    person: sqliteTable("p", columnsOf(tables.person)),
    bodyMeasure: sqliteTable("b", columnsOf(tables.bodyMeasure)),
    segment: sqliteTable("s", columnsOf(tables.segment)),
    visit: sqliteTable("v", columnsOf(tables.visit)),
    event: sqliteTable("e", columnsOf(tables.event)),
    score: sqliteTable("c", columnsOf(tables.score)),
  };
  expectTypeOf<typeof whole.person.$inferSelect>().toEqualTypeOf<Rows["person"]>();
  expectTypeOf<typeof whole.bodyMeasure.$inferSelect>().toEqualTypeOf<Rows["bodyMeasure"]>();
  expectTypeOf<typeof whole.segment.$inferSelect>().toEqualTypeOf<Rows["segment"]>();
  expectTypeOf<typeof whole.visit.$inferSelect>().toEqualTypeOf<Rows["visit"]>();
  expectTypeOf<typeof whole.event.$inferSelect>().toEqualTypeOf<Rows["event"]>();
  expectTypeOf<typeof whole.score.$inferSelect>().toEqualTypeOf<Rows["score"]>();
  for (const table of tableNames) {
    const columns = Object.entries(getTableColumns(whole[table]));
    expect(columns.map(([id, column]) => [id, column.name, column.notNull])).toEqual(
      fieldsOf(table).map(([id, field]) => [id, snake(id), field.required === true]),
    );
  }
});

test("identity and version together hold the codebook's row", () => {
  expectTypeOf<Versions<typeof schema.segment.$inferSelect>>().toEqualTypeOf<
    Omit<Rows["segment"], "person" | "bone" | "side" | "surgeryDay">
  >();
  expectTypeOf<Versions<typeof schema.score.$inferSelect>>().toEqualTypeOf<Pick<Rows["score"], "scoreValue">>();
  expectTypeOf<(typeof schema.segmentId.$inferSelect)["bone"]>().toEqualTypeOf<Rows["segment"]["bone"]>();
  expectTypeOf<(typeof schema.eventId.$inferSelect)["onsetDay"]>().toEqualTypeOf<number | null>();
  for (const table of tableNames) {
    const ids = Object.keys(getTableColumns(schema.versions[table]));
    expect(ids).toEqual(["entity", "sinceBatch", "untilBatch", ...versionedFieldsOf(table).map(([id]) => id)]);
  }
});

test("a code that the codebook lacks doesn't compile in a query", () => {
  const db = drizzle(memory());
  const typo = () =>
    db.select().from(schema.segmentId).where(
      // @ts-expect-error no bone has this name
      eq(schema.segmentId.bone, "femurr"),
    );
  expect(typo().all()).toEqual([]);
});

describe("drizzle's tables and SQLite's have the same columns", () => {
  const names: Readonly<Record<string, TableName | undefined>> = Object.fromEntries(tableNames.map((table) => [snake(table), table]));
  const declaredTables = Object.values(schema).filter((value) => is(value, SQLiteTable));
  test.each(declaredTables.map((table) => [getTableName(table), table] as const))("%s", (name, table) => {
    const held = memory().prepare('SELECT name, type, "notnull" OR pk > 0 AS filled FROM pragma_table_info(?)').all(name);
    const declared = Object.values(getTableColumns(table)).map((column) => ({
      name: column.name,
      type: column.getSQLType().toUpperCase(),
      filled: Number(column.notNull),
    }));
    expect(declared.length).toBeGreaterThan(1);
    expect(held).toEqual(declared);
    if (names[name]) expect(held.length).toBe(versionedFieldsOf(names[name]).length + 3);
  });
});
