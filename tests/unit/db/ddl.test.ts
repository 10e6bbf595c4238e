import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ddl } from "@/db/ddl";
import { type Field, fieldsOf, snake, tableNames, tables } from "@/lib/codebook";
import { memory, refusalOf } from "./memory";

type Sql = string | number | null;

test("the first migration and the codebook agree, byte for byte", () => {
  expect(readFileSync("db/migrations/0001.sql", "utf8")).toBe(ddl());
});

test("every table is STRICT", () => {
  const held = memory().prepare("SELECT name, strict FROM pragma_table_list WHERE type = 'table' AND name NOT LIKE 'sqlite_%'").all();
  expect(held.length).toBe(2 * tableNames.length + 7 + 3);
  expect(held.filter((table) => (table as { strict: number }).strict !== 1)).toEqual([]);
});

test("foreign keys point at identities alone", () => {
  const targets = memory().prepare('SELECT DISTINCT f."table" FROM pragma_table_list t, pragma_foreign_key_list(t.name) f').pluck().all();
  expect([...targets].sort()).toEqual(["body_measure_id", "correction_id", "event_id", "person_id", "score_id", "segment_id", "visit_id"]);
});

/** Where a field's column stands: key fields in the identity table, the others in the version table. Parents' keys stand in the parents. */
const owners: Readonly<Record<string, string>> = { person: "person_id", bone: "segment_id", side: "segment_id", surgeryDay: "segment_id" };
function homeOf(table: string, key: readonly string[], id: string): string {
  return key.includes(id) ? (owners[id] ?? `${snake(table)}_id`) : snake(table);
}

/** A value that the codebook forbids, as SQL would be given it, with the name of the rule that refuses it. */
function forbidden(field: Field): readonly (readonly [value: Sql, rule: string])[] {
  if (field.kind === "code")
    return [
      ["no-such-code", "codes"],
      ["", "codes"],
    ];
  if (field.kind === "listed")
    return [
      ["A", "listed"],
      ["Jane Doe", "listed"],
      [`a${"b".repeat(60)}`, "listed"],
      ["a", "listed"],
      ["1ab", "listed"],
    ];
  if (field.kind === "keyed")
    return [
      ["0".repeat(25), "keyed"],
      ["0".repeat(27), "keyed"],
      [`${"0".repeat(25)}I`, "keyed"],
      [`${"0".repeat(25)}a`, "keyed"],
    ];
  if (field.kind === "flag")
    return [
      [2, "flag"],
      [-1, "flag"],
    ];
  if (field.kind === "day")
    return [
      [-100_001, "days"],
      [22_000_001, "days"],
      [1_700_000_000_000, "days"],
    ];
  const [low, high] = field.hard ?? [0, 0];
  return [
    [low - 1, "limits"],
    [high + 1, "limits"],
    [Number.POSITIVE_INFINITY, field.kind === "count" ? "cannot store REAL" : "limits"],
  ];
}

/** A row of a table that every rule but the one in question lets pass. */
function insertable(db: ReturnType<typeof memory>, home: string, column: string, value: Sql) {
  const columns = db.prepare('SELECT name, type, "notnull" AS filled, pk FROM pragma_table_info(?)').all(home) as {
    name: string;
    type: string;
    filled: number;
    pk: number;
  }[];
  const good: Record<string, Sql> = {
    entity: 1,
    since_batch: 1,
    until_batch: 2147483647,
    person: "0".repeat(26),
    unit: "unit-1",
    line: "dated",
    bone: "femur",
    side: "left",
    surgery_day: 0,
    surgery_year: 2020,
    event_type: "nonunion",
    event_number: 1,
    score_code: "a-score",
    score_day: 0,
    score_value: 1,
    visit_day: 0,
    body_day: 0,
    person_entity: 1,
    segment_entity: 1,
  };
  const needed = columns.filter(({ name, filled }) => filled && name !== column);
  const names = [...needed.map(({ name }) => name), column];
  const values = [...needed.map(({ name }) => good[name] ?? null), value];
  return db.prepare(`INSERT INTO ${home} (${names.join(", ")}) VALUES (${names.map(() => "?").join(", ")})`).run(...values);
}

describe("every field's rule refuses by its name", () => {
  const cases = tableNames.flatMap((table) =>
    fieldsOf(table).flatMap(([id, field]) => forbidden(field).map(([value, rule]) => ({ table, id, field, value, rule }))),
  );
  test("the codebook has as many fields as are tried here", () => {
    expect(new Set(cases.map(({ table, id }) => `${table}.${id}`)).size).toBe(tableNames.flatMap((table) => fieldsOf(table)).length);
  });
  const db = memory();
  db.pragma("foreign_keys = OFF");
  test.each(cases)("$table.$id refuses $value", ({ table, id, value, rule }) => {
    const home = homeOf(table, tables[table].key, id);
    const message = refusalOf(() => insertable(db, home, snake(id), value));
    if (rule.startsWith("cannot")) expect(message).toContain(`${rule} value in INTEGER column ${home}.${snake(id)}`);
    else expect(message).toBe(`CHECK constraint failed: ${home}_${snake(id)}_${rule}`);
  });
});

describe("every field takes what the codebook allows", () => {
  function allowed(field: Field): readonly Sql[] {
    if (field.kind === "code") return field.codes;
    if (field.kind === "listed") return ["unit-1", "ab"];
    if (field.kind === "keyed") return ["0123456789ABCDEFGHJKMNPQRS", "TVWXYZ0123456789ABCDEFGHJK"];
    if (field.kind === "flag") return [0, 1];
    if (field.kind === "day") return [-62_000, 0, 21_010_000];
    return field.hard ?? [];
  }
  const cases = tableNames.flatMap((table) => fieldsOf(table).map(([id, field]) => ({ table, id, field })));
  test.each(cases)("$table.$id", ({ table, id, field }) => {
    const values = [...allowed(field), ...(field.required || tables[table].key.some((key) => key === id) ? [] : [null])];
    expect(values.length).toBeGreaterThan(0);
    for (const value of values) {
      const db = memory();
      db.pragma("foreign_keys = OFF");
      expect(insertable(db, homeOf(table, tables[table].key, id), snake(id), value).changes).toBe(1);
    }
  });
});

test("a whole number is whole, and a required field is filled", () => {
  const db = memory();
  db.pragma("foreign_keys = OFF");
  expect(refusalOf(() => insertable(db, "visit", "cortices", 1.5))).toBe("cannot store REAL value in INTEGER column visit.cortices");
  expect(refusalOf(() => insertable(db, "segment", "surgery_year", null))).toBe("NOT NULL constraint failed: segment.surgery_year");
  expect(refusalOf(() => insertable(db, "person_id", "person", null))).toBe("NOT NULL constraint failed: person_id.person");
});
