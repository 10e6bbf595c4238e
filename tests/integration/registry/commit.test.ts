import { expect, test } from "vitest";
import { tableNames } from "@/lib/codebook";
import type { Finding } from "@/lib/intake";
import { RowsRefused } from "@/lib/registry";
import { at, fresh, freshWithLists, heldBy } from "./folder";
import { anEvent, aPerson, aSegment, aVisit, personKey, row, rowsOf } from "./rows";

const none = { persons: 0, bodyMeasures: 0, segments: 0, visits: 0, events: 0, scores: 0 };
const firstSheet = () =>
  rowsOf({
    person: [aPerson(1, { sex: "female" }), aPerson(2)],
    segment: [aSegment(1, { gainMm: 50 }), aSegment(1, { side: "right", gainMm: 48.5 }), aSegment(2)],
  });

/** The codes of what a commit is refused for, each with its table, place and field where there are such. */
async function refusalOf(work: Promise<unknown>): Promise<readonly string[]> {
  const error: unknown = await work.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  if (!(error instanceof RowsRefused)) throw new Error(`not refused for its rows: ${String(error)}`);
  return error.findings.map(({ code, table, place, field }) => [code, table, place, field].filter((part) => part !== null).join(" "));
}

test("a first sheet is one batch, and all of it is new", async () => {
  const registry = await fresh();
  const done = await registry.commit(firstSheet(), { at, findings: { "months-converted": 3 } });
  expect(done).toMatchObject({ batch: 1, committed: { ...none, persons: 2, segments: 3 }, changed: none, unchanged: none });
  expect(await registry.batches()).toEqual([
    { batch: 1, kind: "intake", at, counts: { ...none, persons: 2, segments: 3 }, contentHash: done.contentHash, undoes: null },
  ]);
  expect(await registry.state()).toEqual({ batch: 1, erasures: 0 });
});

test("the same sheet again changes nothing and makes no batch", async () => {
  const registry = await fresh();
  const { contentHash } = await registry.commit(firstSheet(), { at });
  const again = await registry.commit(firstSheet(), { at });
  const unchanged = { ...none, persons: 2, segments: 3 };
  expect(again).toEqual({ batch: null, committed: none, changed: none, unchanged, asks: {}, contentHash });
  expect(await registry.batches()).toHaveLength(1);
});

test("no rows at all make no batch, in an empty registry neither", async () => {
  const registry = await fresh();
  expect((await registry.commit(rowsOf({}), { at })).batch).toBe(null);
  expect(await registry.state()).toEqual({ batch: 0, erasures: 0 });
});

test("a later sheet changes what differs, adds what is new and leaves what is absent", async () => {
  const registry = await fresh();
  await registry.commit(firstSheet(), { at });
  const done = await registry.commit(
    rowsOf({ person: [aPerson(1)], segment: [aSegment(1, { gainMm: 52 }), aSegment(1, { bone: "tibia" })] }),
    { at },
  );
  expect(done).toMatchObject({
    batch: 2,
    committed: { ...none, segments: 1 },
    changed: { ...none, segments: 1 },
    unchanged: { ...none, persons: 1 },
  });
  const gains = (await heldBy(registry))
    .filter(({ table }) => table === "segment")
    .map(({ row: held }) => (held as { gainMm: number | null }).gainMm);
  expect(gains).toEqual([52, 48.5, null, null]);
});

test("a blank cell never clears a value held", async () => {
  const registry = await fresh();
  await registry.commit(firstSheet(), { at });
  const done = await registry.commit(
    rowsOf({ person: [aPerson(1, { sex: null })], segment: [aSegment(1, { gainMm: null, device: "other" })] }),
    { at },
  );
  expect(done).toMatchObject({ changed: { ...none, segments: 1 }, unchanged: { ...none, persons: 1 } });
  const held = await heldBy(registry);
  expect(held[0]?.row).toMatchObject({ sex: "female" });
  expect(held[2]?.row).toMatchObject({ gainMm: 50, device: "other" });
});

test("false and 0 are values, not blanks", async () => {
  const registry = await fresh();
  await registry.commit(rowsOf({ person: [aPerson(1, { diabetes: true })], segment: [aSegment(1, { gainMm: 10 })] }), { at });
  await registry.commit(rowsOf({ person: [aPerson(1, { diabetes: false })], segment: [aSegment(1, { gainMm: 0 })] }), { at });
  const [person, segment] = await heldBy(registry);
  expect([person?.row, segment?.row]).toMatchObject([{ diabetes: false }, { gainMm: 0 }]);
});

test("rows of one person that repeat or complete each other are one row", async () => {
  const registry = await fresh();
  const person = [aPerson(1, { sex: "female" }), aPerson(1), aPerson(1, { sex: "female", smoking: "never" })];
  expect((await registry.commit(rowsOf({ person }), { at })).committed.persons).toBe(1);
  expect((await heldBy(registry))[0]?.row).toMatchObject({ sex: "female", smoking: "never" });
});

test("rows of one person that contradict each other are refused, in either order", async () => {
  const registry = await fresh();
  const two = [aPerson(1, { sex: "female" }), aPerson(1, { sex: "male" })];
  for (const person of [two, [...two].reverse()]) {
    expect(await refusalOf(registry.commit(rowsOf({ person }), { at }))).toEqual(["repeats-conflict person 1 sex"]);
  }
  expect(await registry.state()).toEqual({ batch: 0, erasures: 0 });
});

test("two sheets in either order give the same content hash", async () => {
  const sheets = [
    rowsOf({
      person: [aPerson(2, { sex: "male" }), aPerson(9)],
      segment: [aSegment(9), aSegment(2, { gainMm: 33 })],
      event: [anEvent(9, { onsetDay: 5 }), anEvent(9)],
    }),
    rowsOf({
      person: [aPerson(1), aPerson(2, { smoking: "ever" })],
      segment: [aSegment(2, { gainFinalMm: 31 }), aSegment(1)],
      visit: [aVisit(2, 1040, { cortices: 2 })],
    }),
  ] as const;
  const hashes = [];
  for (const [first, second] of [sheets, [sheets[1], sheets[0]]] as const) {
    const registry = await fresh();
    await registry.commit(first, { at });
    hashes.push((await registry.commit(second, { at: "2027-01-01T00:00:00Z" })).contentHash);
  }
  expect(hashes[0]).toBe(hashes[1]);
  const whole = await fresh();
  expect(
    (
      await whole.commit(
        rowsOf({
          person: [...sheets[0].person, ...sheets[1].person],
          segment: [...sheets[0].segment, ...sheets[1].segment],
          visit: sheets[1].visit,
          event: sheets[0].event,
        }),
        { at },
      )
    ).contentHash,
  ).toBe(hashes[0]);
});

const alone = () =>
  rowsOf({
    visit: [aVisit(1, 1030)],
    event: [anEvent(1, { bone: "femur", side: "left", surgeryDay: 1000 }), anEvent(1)],
    score: [row("score", { person: personKey(1), scoreCode: "a-score", scoreDay: 900, scoreValue: 70 })],
    bodyMeasure: [row("bodyMeasure", { person: personKey(1), bodyDay: 900, statureMm: 1600 })],
  });
const frameLengths = async (registry: Awaited<ReturnType<typeof fresh>>) => {
  const state = await registry.state();
  return Promise.all(tableNames.map(async (table) => (await registry.frameAsOf(state, table, [])).length));
};

test("visits, events, scores and body measures may come before their person and segment or after: the same is held", async () => {
  const [before, after] = [await freshWithLists(), await freshWithLists()];
  const parents = rowsOf({ person: [aPerson(1)], segment: [aSegment(1)] });
  expect((await before.commit(alone(), { at })).committed).toEqual({ ...none, bodyMeasures: 1, visits: 1, events: 2, scores: 1 });
  const later = await before.commit(parents, { at });
  await after.commit(parents, { at });
  expect((await after.commit(alone(), { at })).contentHash).toBe(later.contentHash);
  expect(later.committed).toEqual({ ...none, persons: 1, segments: 1 });
  expect(await frameLengths(before)).toEqual([1, 1, 1, 1, 2, 1]);
});

test("a row waits for its person and its segment: no frame has it, and the registry says how many wait", async () => {
  const registry = await freshWithLists();
  await registry.commit(alone(), { at });
  expect(await frameLengths(registry)).toEqual([0, 0, 0, 0, 0, 0]);
  expect(await registry.waiting()).toEqual({ ...none, bodyMeasures: 1, visits: 1, events: 2, scores: 1 });
  // the person is there, the bone isn't
  await registry.commit(rowsOf({ person: [aPerson(1)] }), { at });
  expect(await frameLengths(registry)).toEqual([1, 1, 0, 0, 1, 1]);
  expect(await registry.waiting()).toEqual({ ...none, visits: 1, events: 1 });
  // the bone is there, the person isn't
  await registry.undo(3, { at });
  await registry.commit(rowsOf({ segment: [aSegment(1)] }), { at });
  expect(await frameLengths(registry)).toEqual([0, 0, 0, 0, 0, 0]);
  expect(await registry.waiting()).toEqual({ ...none, bodyMeasures: 1, segments: 1, visits: 1, events: 2, scores: 1 });
  await registry.commit(rowsOf({ person: [aPerson(1)] }), { at });
  expect(await registry.waiting()).toEqual(none);
  // as of the first sheet they still wait
  expect(await registry.waiting(2)).toMatchObject({ visits: 1, events: 2 });
});

test("an event that names its segment in part is refused, and with it the whole batch", async () => {
  const registry = await fresh();
  const half = rowsOf({ person: [aPerson(1)], segment: [aSegment(1)], event: [anEvent(1, { bone: "femur" })] });
  expect(await refusalOf(registry.commit(half, { at }))).toEqual(["which-segment event 0"]);
  expect(await heldBy(registry)).toEqual([]);
});

test("a person's line of days is dated or undated, never both", async () => {
  const registry = await fresh();
  await registry.commit(rowsOf({ person: [aPerson(1)] }), { at });
  expect(await refusalOf(registry.commit(rowsOf({ person: [aPerson(1, { line: "undated" })] }), { at }))).toEqual([
    "line-differs person 0 line",
  ]);
});

test("intake's check runs inside the commit: an error refuses the batch, a warning doesn't", async () => {
  const finding = (severity: Finding["severity"]): Finding => ({
    code: "gain-over-stroke",
    severity,
    file: null,
    row: null,
    column: null,
    field: "gainMm",
    found: "60",
    expected: "50 or less",
    mend: "",
  });
  const strict = await fresh((rows) => rows.segment.map(() => finding("error")));
  expect(await refusalOf(strict.commit(firstSheet(), { at }))).toEqual(
    [0, 1, 2].map((place) => `gain-over-stroke segment ${place} gainMm`),
  );
  expect(await heldBy(strict)).toEqual([]);
  const mild = await fresh((rows) => rows.segment.map(() => finding("warn")));
  expect((await mild.commit(firstSheet(), { at })).batch).toBe(1);
});

test("what the check lets through, the tables still refuse, by column and without the value", async () => {
  const registry = await fresh();
  const wrong = (fields: object) => rowsOf({ person: [aPerson(1)], segment: [{ ...aSegment(1), ...fields }] });
  expect(await refusalOf(registry.commit(wrong({ gainMm: 251 }), { at }))).toEqual(["out-of-hard-range segment gainMm"]);
  expect(await refusalOf(registry.commit(wrong({ device: "Jane Doe" }), { at }))).toEqual(["not-a-code segment device"]);
  expect(await refusalOf(registry.commit(wrong({ surgeryYear: null }), { at }))).toEqual(["required-missing segment surgeryYear"]);
  expect(await refusalOf(registry.commit(wrong({ gainMm: "Jane Doe" }), { at }))).toEqual(["not-a-number segment gainMm"]);
  const message = await registry.commit(wrong({ device: "Jane Doe" }), { at }).catch((error: unknown) => String(error));
  expect(message).not.toContain("Jane");
  await expect(registry.commit(wrong({ gainMm: Number.NaN }), { at })).rejects.toThrow("received NaN");
  expect(await registry.state()).toEqual({ batch: 0, erasures: 0 });
});

test("what is no field of the codebook is never kept", async () => {
  const registry = await fresh();
  await registry.commit(rowsOf({ person: [{ ...aPerson(1), patientName: "Jane Doe" } as ReturnType<typeof aPerson>] }), { at });
  expect(JSON.stringify(await heldBy(registry))).not.toContain("Jane");
});

test.each(["2026-01-31", "2026-01-31T09:30:00", "2026-01-31T09:30:00.000Z", "2026-13-31T09:30:00Z", "now"])(
  "%s is no time of a batch",
  async (when) => {
    const registry = await fresh();
    await expect(registry.commit(firstSheet(), { at: when })).rejects.toThrow("a batch requires a UTC time of whole seconds");
  },
);
