import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fieldsOf, type TableName, tableNames } from "@/lib/codebook";
import type { StrippedRows } from "@/lib/intake";
import { NotOnePatient } from "@/lib/registry";
import { at, fresh, heldBy } from "./folder";
import { anEvent, aPerson, aSegment, aVisit, personKey, row, rowsOf } from "./rows";

// One invented patient under two numbers: a day of the second lies 40 days later on the line of the first.
const days = 40;
const first = rowsOf({ person: [aPerson(1, { sex: "female" })], segment: [aSegment(1, { gainMm: 50, device: "magnetic-nail" })] });
const second = rowsOf({
  person: [aPerson(2, { smoking: "never", followUpStatus: "discharged", followUpStatusDay: 2000 })],
  segment: [
    // the same operation, on its own line
    aSegment(2, { surgeryDay: 1000 - days, gainMm: 51, consolidationDay: 1200 - days }),
    aSegment(2, { bone: "tibia", surgeryDay: 3000, surgeryYear: 2025 }),
  ],
  visit: [{ ...aVisit(2, 1030 - days, { cortices: 2 }), surgeryDay: 1000 - days }],
  bodyMeasure: [row("bodyMeasure", { person: personKey(2), bodyDay: 990 - days, statureMm: 1615 })],
});

async function both() {
  const registry = await fresh();
  await registry.commit(first, { at });
  await registry.commit(second, { at });
  return registry;
}
const join = { person: 2, into: 1, days, at };

test("rows of both numbers are read as one patient's, on the line of the first", async () => {
  const registry = await both();
  const { same } = await registry.join(join);
  expect(same).toMatchObject({ persons: 1, segments: 1, visits: 0 });
  expect((await heldBy(registry)).map(({ table, row: held }) => [table, held])).toMatchObject([
    ["person", { person: personKey(1), sex: "female", smoking: "never", followUpStatus: "discharged", followUpStatusDay: 2040 }],
    ["bodyMeasure", { person: personKey(1), bodyDay: 990, statureMm: 1615 }],
    // what the second says of the same operation was brought later
    ["segment", { person: personKey(1), bone: "femur", surgeryDay: 1000, gainMm: 51, device: "magnetic-nail", consolidationDay: 1200 }],
    ["segment", { person: personKey(1), bone: "tibia", surgeryDay: 3040 }],
    ["visit", { person: personKey(1), surgeryDay: 1000, visitDay: 1030, cortices: 2 }],
  ]);
});

test("frames have one person, its segments and what stands under them", async () => {
  const registry = await both();
  await registry.join(join);
  const state = await registry.state();
  const persons = await registry.frameAsOf(state, "person", ["person", "sex", "smoking"]);
  expect([...persons.entity]).toEqual([1]);
  expect(persons.columns.person).toMatchObject({ labels: [personKey(1)] });
  const segments = await registry.frameAsOf(state, "segment", ["surgeryDay", "gainMm"]);
  expect([...segments.personEntity]).toEqual([1, 1]);
  expect(segments.columns.surgeryDay).toMatchObject({ values: Float64Array.from([1000, 3040]) });
  const visits = await registry.frameAsOf(state, "visit", ["visitDay"]);
  expect([...(visits.segmentEntity ?? [])]).toEqual([segments.entity[0]]);
  // before the join they were two
  expect((await registry.frameAsOf({ ...state, batch: 2 }, "person", [])).length).toBe(2);
});

test("later files of either number go to the patient, whichever number held the segment", async () => {
  const registry = await both();
  await registry.join(join);
  const tibia = { bone: "tibia", surgeryDay: 3040 } as const;
  await registry.commit(rowsOf({ visit: [aVisit(1, 3100, { ...tibia, cortices: 1 })] }), { at });
  await registry.commit(rowsOf({ visit: [{ ...aVisit(2, 1060 - days, { cortices: 3 }), surgeryDay: 1000 - days }] }), { at });
  const segments = await registry.frameAsOf(await registry.state(), "segment", ["bone"]);
  const visits = await registry.frameAsOf(await registry.state(), "visit", ["visitDay", "cortices"]);
  const [femur, other] = [...segments.entity];
  expect([...visits.entity].map((_, i) => [visits.segmentEntity?.[i], visits.columns.visitDay?.values[i]])).toEqual([
    [femur, 1030],
    [other, 3100],
    [femur, 1060],
  ]);
});

test("parted, each number has its own again, and what came since with it; a part can be undone", async () => {
  const registry = await both();
  const apart = await registry.contentHash();
  await registry.join(join);
  const joined = await registry.contentHash();
  const parted = await registry.part({ person: 2, at });
  expect(parted).toMatchObject({ batch: 4, contentHash: apart });
  expect(await registry.undo(4, { at })).toMatchObject({ contentHash: joined });
  await registry.commit(rowsOf({ segment: [aSegment(2, { bone: "tibia", surgeryDay: 3000, surgeryYear: 2025, gainMm: 33 })] }), { at });
  await registry.part({ person: 2, at });
  const held = (await heldBy(registry)).filter(({ table }) => table === "segment");
  expect(held.map(({ row: segment }) => segment)).toMatchObject([
    { person: personKey(1), surgeryDay: 1000, gainMm: 50 },
    { person: personKey(2), surgeryDay: 960, gainMm: 51 },
    { person: personKey(2), surgeryDay: 3000, gainMm: 33 },
  ]);
  expect((await registry.batches()).map(({ kind }) => kind)).toEqual(["intake", "intake", "join", "part", "undo", "intake", "part"]);
});

test("a join can be undone, also after later files", async () => {
  const registry = await both();
  await registry.join(join);
  await registry.commit(rowsOf({ visit: [aVisit(1, 1090)] }), { at });
  expect(await registry.undo(3, { at })).toMatchObject({ batch: 5, undoes: 3 });
  expect(await registry.joins()).toEqual([]);
  expect((await heldBy(registry)).filter(({ table }) => table === "person")).toHaveLength(2);
});

test("rows of a case are those of all its numbers; a second number has none of its own", async () => {
  const registry = await both();
  await registry.join(join);
  expect((await registry.rowsOf(1)).map(({ table, entity, segmentEntity }) => [table, entity, segmentEntity])).toEqual([
    ["person", 1, null],
    ["bodyMeasure", 1, null],
    ["segment", 1, 1],
    ["segment", 3, 3],
    ["visit", 1, 1],
  ]);
  expect(await registry.rowsOf(2)).toEqual([]);
  expect((await registry.rowsOf(2, 2)).length).toBe(5);
  expect((await registry.versionsOf(1)).filter(({ table }) => table === "segment")).toHaveLength(3);
  expect(await registry.joins()).toEqual([{ person: { entity: 2, person: personKey(2), days }, into: 1, since: 3 }]);
});

describe("three numbers", () => {
  test("a number joined to a second number is the first's; parting the second takes it along", async () => {
    const registry = await both();
    await registry.commit(rowsOf({ person: [aPerson(3)], segment: [aSegment(3, { bone: "humerus", surgeryDay: 5 })] }), { at });
    await registry.join(join);
    await registry.join({ person: 3, into: 2, days: 100, at });
    const days3 = async () =>
      (await heldBy(registry)).flatMap(({ table, row: held }) =>
        table === "segment" ? [held as { person: string; surgeryDay: number }] : [],
      );
    // 5 days + 100 to the line of the second, + 40 to that of the first
    expect((await days3()).find(({ surgeryDay }) => surgeryDay === 145)?.person).toBe(personKey(1));
    expect((await registry.frameAsOf(await registry.state(), "person", [])).length).toBe(1);
    await registry.part({ person: 3, at });
    expect((await days3()).find(({ surgeryDay }) => surgeryDay === 5)?.person).toBe(personKey(3));
  });
  test("a circle, a second join and a stranger are refused", async () => {
    const registry = await both();
    await registry.join(join);
    await expect(registry.join({ person: 1, into: 2, days: -days, at })).rejects.toThrow("join requires two patients, received one");
    await expect(registry.join({ ...join, into: 1 })).rejects.toThrow("join requires a number that isn't joined yet");
    await expect(registry.join({ person: 7, into: 1, days, at })).rejects.toThrow("join requires two persons that are held");
    await expect(registry.part({ person: 1, at })).rejects.toThrow("part requires a number that is joined");
    expect((await registry.state()).batch).toBe(3);
  });
});

test.each([
  ["sex", aPerson(2, { sex: "male" })],
  ["line", aPerson(2, { line: "undated" })],
] as const)("two numbers that differ in %s are not joined", async (field, other) => {
  const registry = await fresh();
  await registry.commit(rowsOf({ person: [aPerson(1, { sex: "female" }), other] }), { at });
  const refused = await registry.join({ ...join, days: 0 }).catch((error: unknown) => error);
  expect(refused).toBeInstanceOf(NotOnePatient);
  expect(refused).toMatchObject({ field });
  expect((await registry.state()).batch).toBe(1);
});

// What one number would have held: the same sheets with every row of the second under the first, its days moved.
function asOneNumber(rows: StrippedRows): StrippedRows {
  const moved = (table: TableName, one: object) => {
    const held = one as Readonly<Record<string, unknown>>;
    if (held.person !== personKey(2)) return one;
    const dayFields = new Set(fieldsOf(table).flatMap(([id, { kind }]) => (kind === "day" ? [id] : [])));
    const entries = Object.entries(held).map(([id, value]) => [id, dayFields.has(id) && typeof value === "number" ? value + days : value]);
    return { ...Object.fromEntries(entries), person: personKey(1) };
  };
  return Object.fromEntries(tableNames.map((table) => [table, rows[table].map((one) => moved(table, one))])) as unknown as StrippedRows;
}

// Every sheet has values of its own: a number that says again what the other has contradicted since says nothing new, and a single number
// would not know of the contradiction.
const shift = (number: number) => (number === 1 ? 0 : -days);
const n = fc.constantFrom(1, 2);
const bone = fc.constantFrom("femur" as const, "tibia" as const);
const told = fc.boolean();
const surgery = fc.constantFrom(1000, 2000);
type Sheet = (own: number) => StrippedRows;
const sheet: fc.Arbitrary<Sheet> = fc
  .record({
    n,
    bone,
    surgery,
    person: told,
    segment: told,
    visit: told,
    event: told,
    body: told,
    day: fc.constantFrom(1010, 1040),
    onset: fc.constantFrom(null, 1005),
    gain: told,
    healed: told,
  })
  .map((has) => (own) => {
    const [number, days2] = [has.n, shift(has.n)];
    const key = { bone: has.bone, surgeryDay: has.surgery + days2 };
    return rowsOf({
      person: has.person ? [aPerson(number, { followUpStatusDay: 3000 + own + days2 })] : [],
      bodyMeasure: has.body ? [row("bodyMeasure", { person: personKey(number), bodyDay: has.day + days2, statureMm: 1600 + own })] : [],
      segment: has.segment
        ? [aSegment(number, { ...key, gainMm: has.gain ? 40 + own : null, consolidationDay: has.healed ? 1200 + own + days2 : null })]
        : [],
      visit: has.visit ? [aVisit(number, has.day + days2, { ...key, distractedMm: own })] : [],
      event: has.event
        ? [anEvent(number, { onsetDay: has.onset === null ? null : has.onset + days2, resolvedDay: 1500 + own + days2 })]
        : [],
    });
  });

test("whatever the sheets and whenever the join, the patient is what one number would have held", async () => {
  const seen = { merged: 0, runs: 0 };
  await fc.assert(
    fc.asyncProperty(fc.array(sheet, { minLength: 2, maxLength: 8 }), fc.nat(8), async (sheets, when) => {
      const [two, one] = [await fresh(), await fresh()];
      const everybody = rowsOf({ person: [aPerson(1), aPerson(2)] });
      await two.commit(everybody, { at });
      await one.commit(rowsOf({ person: [aPerson(1)] }), { at });
      for (const [i, sheetOf] of sheets.entries()) {
        const rows = sheetOf(i);
        if (i === Math.min(when, sheets.length - 1)) await two.join(join);
        await two.commit(rows, { at });
        await one.commit(asOneNumber(rows), { at });
      }
      expect(await two.contentHash()).toBe(await one.contentHash());
      expect(await heldBy(two)).toEqual(await heldBy(one));
      for (const table of tableNames) {
        const [a, b] = await Promise.all(
          [two, one].map(async (registry) =>
            registry.frameAsOf(
              await registry.state(),
              table,
              fieldsOf(table).map(([id]) => id),
            ),
          ),
        );
        expect(a?.length).toBe(b?.length);
      }
      seen.runs += 1;
      if ((await two.rowsOf(1)).length < (await two.versionsOf(1)).filter(({ until }) => until === null).length - 1) seen.merged += 1;
      await two.close();
      await one.close();
    }),
    { numRuns: 60 },
  );
  // rows of both numbers met in many of the walks: else the equality says little
  expect(seen.merged).toBeGreaterThan(10);
});
