import { beforeEach, describe, expect, test } from "vitest";
import { correctionReasons, fieldsOf, tableNames } from "@/lib/codebook";
import { keyed, memory, refusalOf } from "./memory";

let db = memory();
type Sql = string | number | null;
const run = (sql: string, ...values: Sql[]) => db.prepare(sql).run(...values);
const refusal = (sql: string, ...values: Sql[]) => refusalOf(() => run(sql, ...values));
const open = 2147483647;
const insertId = "INSERT INTO correction_id (of_table, of_entity, field) VALUES (?, ?, ?)";
const insert = "INSERT INTO correction (entity, since_batch, until_batch, sheet, reason) VALUES (?, ?, ?, ?, ?)";
const join = "INSERT INTO joined (entity, since_batch, until_batch, into_entity, days) VALUES (?, ?, ?, ?, ?)";

beforeEach(() => {
  db = memory();
  for (const n of [1, 2, 3]) run("INSERT INTO person_id (person) VALUES (?)", keyed(n));
  run(insertId, "segment", 7, "gainMm");
});

describe("corrections", () => {
  test("every field of every table can be named, once a row", () => {
    for (const table of tableNames) for (const [field] of fieldsOf(table)) expect(run(insertId, table, 99, field).changes).toBe(1);
    expect(refusal(insertId, "segment", 7, "gainMm")).toContain("UNIQUE constraint failed: correction_id.of_table");
    expect(refusal(insertId, "shoe", 7, "gainMm")).toContain("correction_id_of_table_codes");
    expect(refusal(insertId, "segment", 7, "gain mm; drop")).toContain("correction_id_field_word");
  });

  test("the reasons are the codebook's, and no words of one's own", () => {
    for (const [i, reason] of correctionReasons.entries()) expect(run(insert, 1, i + 1, i + 2, 50, reason).changes).toBe(1);
    expect(refusal(insert, 1, 90, open, 50, "Mrs Smith said so")).toContain("correction_reason_codes");
  });

  test.each([[null], [0], [-3.5], ["magnetic-nail"], ["0123456789ABCDEFGHJKMNPQRS"]])("a sheet's value can be %s", (sheet) => {
    expect(run(insert, 1, 1, open, sheet, "typing-error").changes).toBe(1);
    expect(db.prepare("SELECT sheet FROM correction").pluck().get()).toBe(sheet);
  });
  test.each([["Anna Smith"], ["12/03/2024"], ["x".repeat(61)], ["a.b@c.de"]])("a sheet's value can't be %s", (sheet) => {
    expect(refusal(insert, 1, 1, open, sheet, "typing-error")).toContain("correction_sheet_value");
  });

  test("one stands at a time; it is closed once, never changed, and deleted by erasure alone", () => {
    run(insert, 1, 2, open, 50, "typing-error");
    expect(refusal(insert, 1, 3, open, 50, "other")).toContain("UNIQUE");
    expect(refusal("UPDATE correction SET sheet = 51")).toBe("correction: a version is never changed");
    expect(refusal("UPDATE correction_id SET field = 'side'")).toBe("correction_id: an identity is never changed");
    expect(run("UPDATE correction SET until_batch = 3").changes).toBe(1);
    expect(refusal("UPDATE correction SET until_batch = 4")).toBe("correction: a version is closed once");
    expect(refusal("DELETE FROM correction")).toBe("correction: a version goes by erasure alone");
    expect(refusal("DELETE FROM correction_id")).toBe("correction_id: an identity goes by erasure alone");
    run("UPDATE erasure SET running = 1");
    expect(run("DELETE FROM correction").changes).toBe(1);
    expect(run("DELETE FROM correction_id").changes).toBe(1);
  });
});

describe("numbers of one patient", () => {
  test("one person is joined to another, by a difference of two shifts", () => {
    expect(run(join, 2, 1, open, 1, -36_524).changes).toBe(1);
    expect(run(join, 3, 1, open, 1, 36_524).changes).toBe(1);
    expect(refusal(join, 1, 1, open, 1, 0)).toContain("joined_two");
    expect(refusal(join, 1, 1, open, 2, 36_525)).toContain("joined_days_limits");
    expect(refusal(join, 9, 1, open, 1, 0)).toContain("FOREIGN KEY");
    expect(refusal(join, 1, 1, open, 9, 0)).toContain("FOREIGN KEY");
    expect(refusal(join, 2, 2, open, 3, 0)).toContain("UNIQUE");
  });

  test("a join is closed once, never changed, and deleted by erasure alone", () => {
    run(join, 2, 1, open, 1, 5);
    expect(refusal("UPDATE joined SET days = 6")).toBe("joined: a version is never changed");
    expect(run("UPDATE joined SET until_batch = 3").changes).toBe(1);
    expect(refusal("UPDATE joined SET until_batch = 4")).toBe("joined: a version is closed once");
    expect(refusal("DELETE FROM joined")).toBe("joined: a version goes by erasure alone");
  });
});
