import { beforeEach, describe, expect, test } from "vitest";
import { keyed, memory, refusalOf } from "./memory";

let db = memory();
const run = (sql: string, ...values: (string | number | null)[]) => db.prepare(sql).run(...values);
const refusal = (sql: string, ...values: (string | number | null)[]) => refusalOf(() => run(sql, ...values));
const open = 2147483647;

beforeEach(() => {
  db = memory();
  run("INSERT INTO person_id (person) VALUES (?)", keyed(1));
  run("INSERT INTO person_id (person) VALUES (?)", keyed(2));
  run("INSERT INTO person (entity, since_batch, until_batch, unit, line) VALUES (1, 1, ?, 'unit-1', 'dated')", open);
  run("INSERT INTO segment_id (person_entity, bone, side, surgery_day) VALUES (1, 'femur', 'left', 100)");
});

describe("identities", () => {
  test("a natural key is held once", () => {
    expect(refusal("INSERT INTO person_id (person) VALUES (?)", keyed(1))).toContain("UNIQUE constraint failed: person_id.person");
    expect(refusal("INSERT INTO segment_id (person_entity, bone, side, surgery_day) VALUES (1, 'femur', 'left', 100)")).toContain("UNIQUE");
    expect(run("INSERT INTO segment_id (person_entity, bone, side, surgery_day) VALUES (2, 'femur', 'left', 100)").changes).toBe(1);
  });

  test.each([
    ["of a segment, onset blank", 1, null],
    ["of a person, onset known", null, 120],
    ["of a person, onset blank", null, null],
  ])("a blank is one value of an event's key: %s", (_, segment, onset) => {
    const insert =
      "INSERT INTO event_id (person_entity, segment_entity, event_type, onset_day, event_number) VALUES (1, ?, 'stiffness', ?, ?)";
    expect(run(insert, segment, onset, 1).changes).toBe(1);
    expect(refusal(insert, segment, onset, 1)).toContain("UNIQUE constraint failed: index 'event_id_natural_key'");
    expect(run(insert, segment, onset, 2).changes).toBe(1);
  });

  test("a blank onset and onset on day 0 are two", () => {
    const insert = "INSERT INTO event_id (person_entity, event_type, onset_day, event_number) VALUES (1, 'stiffness', ?, 1)";
    expect(run(insert, null).changes).toBe(1);
    expect(run(insert, 0).changes).toBe(1);
  });

  test("an event's segment is a bone of the event's person", () => {
    const insert = "INSERT INTO event_id (person_entity, segment_entity, event_type, event_number) VALUES (?, 1, 'stiffness', 1)";
    expect(refusal(insert, 2)).toBe("FOREIGN KEY constraint failed");
    expect(run(insert, 1).changes).toBe(1);
  });

  test("are never changed, and deleted by erasure alone", () => {
    expect(refusal("UPDATE segment_id SET side = 'right'")).toBe("segment_id: an identity is never changed");
    expect(refusal("DELETE FROM segment_id")).toBe("segment_id: an identity goes by erasure alone");
    expect(refusal("INSERT OR REPLACE INTO person_id (entity, person) VALUES (2, ?)", keyed(3))).toBe(
      "person_id: an identity goes by erasure alone",
    );
    run("UPDATE erasure SET running = 1");
    expect(run("DELETE FROM segment_id").changes).toBe(1);
  });

  test("an erased identity's number is never given again", () => {
    run("UPDATE erasure SET running = 1");
    run("DELETE FROM segment_id");
    run("INSERT INTO segment_id (person_entity, bone, side, surgery_day) VALUES (1, 'tibia', 'left', 100)");
    expect(db.prepare("SELECT entity FROM segment_id").pluck().all()).toEqual([2]);
  });

  test("a parent can't go before its children", () => {
    run("UPDATE erasure SET running = 1");
    expect(refusal("DELETE FROM person_id WHERE entity = 1")).toBe("FOREIGN KEY constraint failed");
  });
});

describe("versions", () => {
  const close = "UPDATE person SET until_batch = ? WHERE entity = 1 AND since_batch = 1";

  test("a version is closed once", () => {
    expect(run(close, 2).changes).toBe(1);
    expect(refusal(close, 3)).toBe("person: a version is closed once");
    expect(refusal(close, open)).toBe("person: a version is closed once");
  });

  test("closing is the only change", () => {
    expect(refusal(close, open)).toBe("person: a version is closed once");
    expect(refusal(close, 1)).toBe("CHECK constraint failed: person_span");
    expect(refusal("UPDATE person SET smoking = 'never'")).toBe("person: a version is never changed");
    expect(refusal("UPDATE person SET until_batch = 2, smoking = 'never'")).toBe("person: a version is never changed");
    expect(refusal("UPDATE person SET entity = 2")).toBe("person: a version is never changed");
  });

  test("an entity has one open version, and one a batch", () => {
    const insert = "INSERT INTO person (entity, since_batch, until_batch, unit, line) VALUES (1, ?, ?, 'unit-1', 'dated')";
    expect(refusal(insert, 2, open)).toBe("UNIQUE constraint failed: person.entity, person.until_batch");
    expect(refusal(insert, 1, 5)).toBe("UNIQUE constraint failed: person.entity, person.since_batch");
    run(close, 2);
    expect(run(insert, 2, open).changes).toBe(1);
  });

  test("a version names an identity that is held", () => {
    expect(refusal("INSERT INTO person (entity, since_batch, until_batch, unit, line) VALUES (9, 1, ?, 'unit-1', 'dated')", open)).toBe(
      "FOREIGN KEY constraint failed",
    );
  });

  test("is deleted by erasure alone", () => {
    expect(refusal("DELETE FROM person")).toBe("person: a version goes by erasure alone");
    expect(
      refusal("INSERT OR REPLACE INTO person (entity, since_batch, until_batch, unit, line) VALUES (1, 1, ?, 'unit-1', 'undated')", open),
    ).toBe("person: a version goes by erasure alone");
    run("UPDATE erasure SET running = 1");
    expect(run("DELETE FROM person").changes).toBe(1);
  });
});

describe("the ledger", () => {
  const batch = (n: number, kind = "intake", undoes: number | null = null) =>
    ["INSERT INTO batch VALUES (?, ?, '2026-01-01T00:00:00Z', ?, 0, 0, 0, 0, 0, 0, ?)", n, kind, undoes, "a".repeat(64)] as const;

  test("batches are numbered without gaps and never changed", () => {
    expect(refusal(...batch(2))).toBe("batch: numbers run without gaps");
    run(...batch(1));
    expect(refusal(...batch(1))).toBe("batch: numbers run without gaps");
    expect(refusal(...batch(3))).toBe("batch: numbers run without gaps");
    expect(refusal("UPDATE batch SET at = '2026-01-02T00:00:00Z'")).toBe("batch: a batch is never changed");
    expect(refusal("DELETE FROM batch")).toBe("batch: a batch is never deleted");
  });

  test("an undo names an earlier batch, and nothing else does", () => {
    run(...batch(1));
    expect(refusal(...batch(2, "undo"))).toContain("batch_undoes_earlier");
    expect(refusal(...batch(2, "undo", 2))).toContain("batch_undoes_earlier");
    expect(refusal(...batch(2, "intake", 1))).toContain("batch_undoes_earlier");
    expect(run(...batch(2, "undo", 1)).changes).toBe(1);
  });

  test("a registry has one key, sealed again but never another", () => {
    const insert = "INSERT INTO unit_key VALUES (?, ?, 600000, ?, ?, ?)";
    const part = "A".repeat(24);
    run(insert, "passphrase", "key-1", part, part, part);
    expect(refusal(insert, "recovery", "key-2", part, part, part)).toBe("unit_key: a registry has one key");
    run(insert, "recovery", "key-1", part, part, part);
    expect(run("UPDATE unit_key SET sealed = ? WHERE form = 'passphrase'", "B".repeat(24)).changes).toBe(1);
    expect(refusal("UPDATE unit_key SET key_id = 'key-2'")).toBe("unit_key: the same key is sealed again, never another");
    expect(refusal("DELETE FROM unit_key")).toBe("unit_key: the key is never deleted");
    expect(refusal("UPDATE unit_key SET sealed = 'a word of text'")).toContain("unit_key_sealed_base64");
  });

  test("the count of erasures never falls", () => {
    run("UPDATE erasure SET count = 1");
    expect(refusal("UPDATE erasure SET count = 0")).toBe("erasure: the count never falls");
    expect(refusal("DELETE FROM erasure")).toBe("erasure: the count is never deleted");
  });

  test("settings are JSON of one entity, versioned", () => {
    const insert = "INSERT INTO settings VALUES (?, ?, ?, ?)";
    expect(refusal(insert, 1, 1, open, "not json")).toContain("settings_content_json");
    expect(refusal(insert, 2, 1, open, "{}")).toContain("settings_entity_one");
    run(insert, 1, 1, open, "{}");
    expect(refusal("UPDATE settings SET content = '[]'")).toBe("settings: a version is never changed");
  });
});
