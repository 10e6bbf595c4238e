import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { migrate, shippedMigrations } from "@/db/migrate";

const tablesOf = (db: Database.Database) => db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name").pluck().all();
const versionOf = (db: Database.Database) => db.pragma("user_version", { simple: true });
const first = {
  version: 1,
  sql: "CREATE TABLE parent (id INTEGER PRIMARY KEY) STRICT; CREATE TABLE child (parent INTEGER NOT NULL REFERENCES parent (id) ON DELETE CASCADE) STRICT;",
};

test("the shipped migrations are numbered 1, 2, 3 … without gaps", () => {
  const versions = shippedMigrations().map(({ version }) => version);
  expect(versions).toEqual(versions.map((_, i) => i + 1));
  expect(versions.length).toBeGreaterThan(0);
});

test("only what is new is run, in order", () => {
  const db = new Database(":memory:");
  migrate(db, [first]);
  migrate(db, [first, { version: 2, sql: "ALTER TABLE parent ADD COLUMN name TEXT" }]);
  migrate(db, [first, { version: 2, sql: "this is no SQL, and is not read again" }]);
  expect(versionOf(db)).toBe(2);
  expect(tablesOf(db)).toEqual(["child", "parent"]);
});

test("a migration that fails leaves nothing of itself or of those before it", () => {
  const db = new Database(":memory:");
  const broken = { version: 2, sql: "CREATE TABLE half (a TEXT) STRICT; CREATE TABLE half (a TEXT) STRICT;" };
  expect(() => migrate(db, [first, broken])).toThrow("already exists");
  expect(versionOf(db)).toBe(0);
  expect(tablesOf(db)).toEqual([]);
  expect(db.pragma("foreign_keys", { simple: true })).toBe(1);
});

test("a table rebuilt by a migration keeps its children", () => {
  const db = new Database(":memory:");
  migrate(db, [first]);
  db.exec("INSERT INTO parent VALUES (1); INSERT INTO child VALUES (1);");
  const rebuild =
    "CREATE TABLE fresh (id INTEGER PRIMARY KEY, name TEXT) STRICT; INSERT INTO fresh (id) SELECT id FROM parent; DROP TABLE parent; ALTER TABLE fresh RENAME TO parent;";
  migrate(db, [first, { version: 2, sql: rebuild }]);
  expect(db.prepare("SELECT count(*) FROM child").pluck().get()).toBe(1);
});

test("a migration that orphans a child is undone", () => {
  const db = new Database(":memory:");
  migrate(db, [first]);
  db.exec("INSERT INTO parent VALUES (1); INSERT INTO child VALUES (1);");
  expect(() => migrate(db, [first, { version: 2, sql: "DELETE FROM parent" }])).toThrow(
    "migrate requires whole foreign keys, received 1 broken",
  );
  expect(db.prepare("SELECT count(*) FROM parent").pluck().get()).toBe(1);
});
