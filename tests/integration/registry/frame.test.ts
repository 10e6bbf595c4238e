import { join } from "node:path";
import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { type Field, fieldsOf, snake, tableNames, tables } from "@/lib/codebook";
import type { Frame, FrameColumn, Registry } from "@/lib/registry";
import { at, freshWithLists } from "./folder";
import { anEvent, aPerson, aSegment, aVisit, personKey, row, rowsOf } from "./rows";

/** A history with new rows, changed rows, an undo and rows that came back. */
async function history(): Promise<Registry & { readonly folder: string }> {
  const registry = await freshWithLists();
  const scores = [row("score", { person: personKey(2), scoreCode: "a-score", scoreDay: 10, scoreValue: 61.5 })];
  const bodyMeasure = [row("bodyMeasure", { person: personKey(1), bodyDay: -40, statureMm: 1580, statureHow: "wall" })];
  await registry.commit(
    rowsOf({
      person: [aPerson(2, { diabetes: true }), aPerson(1)],
      segment: [aSegment(2, { gainMm: 40, device: "other" })],
      score: scores,
    }),
    { at },
  );
  await registry.commit(
    rowsOf({
      person: [aPerson(1, { sex: "male", diabetes: false })],
      segment: [aSegment(1, { gainMm: 55.5 }), aSegment(2, { gainMm: 41, surgeon: personKey(77) })],
      visit: [aVisit(2, 1040, { cortices: 2 }), aVisit(1, 1030, { nerve: "motor" })],
      event: [anEvent(2), anEvent(1, { bone: "femur", side: "left", surgeryDay: 1000, onsetDay: 1010, planned: false })],
      bodyMeasure,
    }),
    { at },
  );
  await registry.undo(3, { at });
  await registry.commit(rowsOf({ person: [aPerson(3, { unit: "north" })], segment: [aSegment(3, { surgeon: personKey(5) })] }), { at });
  await registry.undo(4, { at });
  return registry;
}

const valueAt = (column: FrameColumn, i: number) => {
  const value = column.values[i] ?? Number.NaN;
  if (column.kind === "number") return Number.isNaN(value) ? null : value;
  if (value === -1) return null;
  if (column.kind === "flag") return value;
  return (column.kind === "code" ? column.codes : column.labels)[value];
};

// Written without the registry's own SQL: one plain query a field, with the parents looked up by themselves.
function plainly(db: Database.Database, table: (typeof tableNames)[number], id: string, batch: number) {
  const [name, column] = [snake(table), snake(id)];
  const home = (db.prepare("SELECT count(*) FROM pragma_table_info(?) WHERE name = ?").pluck().get(name, column) as number)
    ? "versions"
    : "key";
  const held = `SELECT entity FROM ${name} WHERE since_batch <= ${batch} AND until_batch > ${batch}`;
  if (home === "versions")
    return db
      .prepare(`SELECT entity, ${column} AS value FROM ${name} WHERE since_batch <= ${batch} AND until_batch > ${batch} ORDER BY entity`)
      .all();
  const own = (db.prepare("SELECT count(*) FROM pragma_table_info(?) WHERE name = ?").pluck().get(`${name}_id`, column) as number) === 1;
  const from = (parent: string) => `(SELECT ${column} FROM ${parent}_id WHERE entity = k.${parent}_entity)`;
  const viaSegment = "(SELECT person FROM person_id WHERE entity = (SELECT person_entity FROM segment_id WHERE entity = k.segment_entity))";
  const parent = id !== "person" ? from("segment") : table === "visit" ? viaSegment : from("person");
  return db.prepare(`SELECT entity, ${own ? column : parent} AS value FROM ${name}_id k WHERE entity IN (${held}) ORDER BY entity`).all();
}

test("a frame of any batch equals plain as-of queries, field by field", async () => {
  const registry = await history();
  const db = new Database(join(registry.folder, "registry.sqlite"), { readonly: true });
  let compared = 0;
  for (const { batch } of [{ batch: 0 }, ...(await registry.batches())]) {
    for (const table of tableNames) {
      const ids = fieldsOf(table).map(([id]) => id);
      const frame = await registry.frameAsOf({ batch, erasures: 0 }, table, ids);
      for (const id of ids) {
        const column = frame.columns[id];
        if (!column) throw new Error(`no column ${id}`);
        const framed = Array.from(frame.entity, (entity, i) => ({ entity, value: valueAt(column, i) }));
        expect(framed).toEqual(plainly(db, table, id, batch));
        compared += framed.length;
      }
    }
  }
  db.close();
  expect(compared).toBeGreaterThan(1000);
});

test("a frame's parents are those of its rows", async () => {
  const registry = await history();
  const state = await registry.state();
  const frame = async (table: (typeof tableNames)[number]) => registry.frameAsOf(state, table, ["person"]);
  const people = await frame("person");
  const nameOf = new Map(Array.from(people.entity, (entity, i) => [entity, labelAt(people, i)]));
  for (const table of tableNames) {
    const rows = await frame(table);
    expect(Array.from(rows.personEntity, (entity) => nameOf.get(entity))).toEqual(Array.from(rows.entity, (_, i) => labelAt(rows, i)));
  }
  const [segments, visits, events] = [await frame("segment"), await frame("visit"), await frame("event")];
  expect(segments.segmentEntity).toEqual(segments.entity);
  expect(Array.from(visits.segmentEntity ?? [])).toEqual([1, 2]);
  expect(Array.from(events.segmentEntity ?? [])).toEqual([-1, 2]);
  expect([people.segmentEntity, (await frame("score")).segmentEntity]).toEqual([null, null]);
});

function labelAt(frame: Frame, i: number) {
  const column = frame.columns.person;
  return column && valueAt(column, i);
}

test("each kind of field has its kind of column", async () => {
  const registry = await history();
  const kinds: Readonly<Record<Field["kind"], FrameColumn["kind"]>> = {
    code: "code",
    flag: "flag",
    listed: "label",
    keyed: "label",
    day: "number",
    count: "number",
    number: "number",
  };
  for (const table of tableNames) {
    const frame = await registry.frameAsOf(await registry.state(), table, Object.keys(tables[table].fields));
    expect(Object.entries(frame.columns).map(([id, { kind }]) => [id, kind])).toEqual(
      fieldsOf(table).map(([id, { kind }]) => [id, kinds[kind]]),
    );
  }
});

test("a column is read once a state, for the last three states asked for", async () => {
  const registry = await history();
  const gain = async (batch: number) => (await registry.frameAsOf({ batch, erasures: 0 }, "segment", ["gainMm"])).columns.gainMm?.values;
  const first = await gain(2);
  expect(await gain(2)).toBe(first);
  await gain(3);
  await gain(4);
  expect(await gain(2)).toBe(first);
  await gain(5);
  await gain(6);
  await gain(3);
  expect(await gain(2)).not.toBe(first);
  expect(await gain(2)).toEqual(first);
});

test("a frame holds the columns asked for and no others", async () => {
  const registry = await history();
  const state = await registry.state();
  await registry.frameAsOf(state, "segment", ["gainMm", "bone"]);
  expect(Object.keys((await registry.frameAsOf(state, "segment", ["bone"])).columns)).toEqual(["bone"]);
});

test("a state to come, one before an erasure and a field that isn't there are refused", async () => {
  const registry = await history();
  await expect(registry.frameAsOf({ batch: 7, erasures: 0 }, "segment", [])).rejects.toThrow(
    "frameAsOf requires a batch of 0 to 6, received 7",
  );
  await expect(registry.frameAsOf({ batch: 1, erasures: 1 }, "segment", [])).rejects.toThrow(
    "frameAsOf requires a state after 0 erasures, received 1",
  );
  await expect(registry.frameAsOf({ batch: 1, erasures: 0 }, "segment", ["name"])).rejects.toThrow(
    "fieldOf requires a field of segment, received name",
  );
});
