import { join } from "node:path";
import Database from "better-sqlite3";
import { expect, test } from "vitest";
import { checkRows, type StrippedRows } from "@/lib/intake";
import { defaultSettings, type Registry, RowsRefused } from "@/lib/registry";
import { at, fresh, freshWithLists, heldBy, noCheck } from "./folder";
import { anEvent, aPerson, aSegment, personKey, row, rowsOf } from "./rows";

// What a commit refuses with intake's own check inside: lists of the unit, questions left open, and what two sheets would hold together.

/** The findings a commit is refused for, as text; nothing may have been written. */
async function refusalOf(registry: Registry, rows: StrippedRows): Promise<readonly string[]> {
  const before = [await registry.state(), await registry.contentHash()];
  const error: unknown = await registry.commit(rows, { at }).catch((reason: unknown) => reason);
  if (!(error instanceof RowsRefused)) throw new Error(`not refused for its rows: ${String(error)}`);
  expect([await registry.state(), await registry.contentHash()]).toEqual(before);
  return error.findings.map(({ code, table, place, field }) => `${code}: ${table} ${place} ${field}`);
}

const score = (scoreCode: string) => row("score", { person: personKey(1), scoreCode, scoreDay: 7, scoreValue: 61.5 });

test("unless the unit says otherwise there is one unit, and no score", async () => {
  const registry = await fresh();
  expect(await refusalOf(registry, rowsOf({ person: [aPerson(1), aPerson(2, { unit: "north" })] }))).toEqual(["not-a-code: person 1 unit"]);
  expect(await refusalOf(registry, rowsOf({ person: [aPerson(1)], score: [score("a-score")] }))).toEqual(["not-a-code: score 0 scoreCode"]);
  expect(await registry.commit(rowsOf({ person: [aPerson(1)] }), { at })).toMatchObject({ batch: 1 });
});

test("codes that the unit lists are taken, as of the batch: not before they are listed, nor after they are taken off", async () => {
  const registry = await freshWithLists();
  const rows = rowsOf({ person: [aPerson(1, { unit: "north" })], score: [score("a-score")] });
  expect(await registry.commit(rows, { at })).toMatchObject({ batch: 2 });
  expect(await refusalOf(registry, rowsOf({ score: [score("another-score")] }))).toEqual(["not-a-code: score 0 scoreCode"]);
  await registry.saveSettings(defaultSettings, { at });
  expect(await refusalOf(registry, rows)).toEqual(["not-a-code: person 0 unit"].concat("not-a-code: score 0 scoreCode"));
});

test("a surname has the form of a unit's code, and is neither taken nor repeated", async () => {
  const registry = await fresh(noCheck);
  const rows = rowsOf({ person: [aPerson(1, { unit: "quellthorpe" })] });
  const error = await registry.commit(rows, { at }).catch((reason: unknown) => reason as RowsRefused);
  expect(error).toBeInstanceOf(RowsRefused);
  const said = JSON.stringify([String(error), (error as RowsRefused).findings]);
  expect(said).not.toContain("quellthorpe");
  expect(said).toContain("one of: unit-1");
});

test("a question that nobody answered bars the commit as an error does", async () => {
  const registry = await fresh(checkRows);
  const early = aSegment(1, { distractionStartDay: 1005, distractionEndDay: 1060, consolidationDay: 1050 });
  const out = aSegment(2, { implantRemovalDay: 1100, lastNotHealedDay: 1200 });
  expect(await refusalOf(registry, rowsOf({ person: [aPerson(1), aPerson(2)], segment: [early, out] }))).toEqual([
    "premature-consolidation-or-slip: segment 0 consolidationDay",
    "implant-out-unhealed: segment 1 implantRemovalDay",
  ]);
  // answered, the row says so itself
  const answered = rowsOf({ person: [aPerson(2)], segment: [{ ...out, implantOutReason: "infection" }] });
  expect(await registry.commit(answered, { at })).toMatchObject({ batch: 1, asks: {} });
});

test("an error is told with the table and the place of its row", async () => {
  const registry = await fresh(checkRows);
  const wrong = aSegment(2, { distractionStartDay: 1005, distractionEndDay: 1001 });
  const pin = anEvent(1, { bone: "femur", side: "left", surgeryDay: 1000, eventType: "pin-loose" });
  const rows = rowsOf({
    person: [aPerson(1), aPerson(2)],
    segment: [aSegment(1, { device: "magnetic-nail" }), wrong],
    event: [anEvent(2), pin],
  });
  expect(await refusalOf(registry, rows)).toEqual([
    "days-out-of-order: segment 1 distractionEndDay",
    "fixator-event-without-fixator: event 1 eventType",
  ]);
});

test("two sheets that each say a part can't hold together what neither may say alone, whichever comes first", async () => {
  const parts = [
    rowsOf({ person: [aPerson(1), aPerson(2)], segment: [aSegment(2), aSegment(1, { distractionStartDay: 1040 })] }),
    rowsOf({ person: [aPerson(1)], segment: [aSegment(1, { distractionEndDay: 1030 })] }),
  ] as const;
  const first = await fresh(checkRows);
  await first.commit(parts[0], { at });
  expect(await refusalOf(first, parts[1])).toEqual(["days-out-of-order: segment 0 distractionEndDay"]);
  const second = await fresh(checkRows);
  await second.commit(parts[1], { at });
  expect(await refusalOf(second, parts[0])).toEqual(["days-out-of-order: segment 1 distractionEndDay"]);
  // a sheet that mends the held day is taken
  expect(
    await first.commit(rowsOf({ segment: [aSegment(1, { distractionStartDay: 1004, distractionEndDay: 1030 })] }), { at }),
  ).toMatchObject({ batch: 2, changed: { segments: 1 } });
});

test("an event of pins is refused beside a nail of another sheet, whichever comes first", async () => {
  const nail = rowsOf({ person: [aPerson(1)], segment: [aSegment(1, { device: "magnetic-nail" })] });
  const pin = rowsOf({
    person: [aPerson(1)],
    event: [anEvent(1, { bone: "femur", side: "left", surgeryDay: 1000, eventType: "pin-loose", onsetDay: 1030 })],
  });
  const after = await fresh(checkRows);
  await after.commit(nail, { at });
  expect(await refusalOf(after, pin)).toEqual(["fixator-event-without-fixator: event 0 eventType"]);
  const before = await fresh(checkRows);
  await before.commit(pin, { at });
  expect(await refusalOf(before, nail)).toEqual(["fixator-event-without-fixator: event null eventType"]);
  // the same sheet again says nothing of the device: it is the held one that counts
  const blank = rowsOf({ person: [aPerson(1)], segment: [aSegment(1)], event: pin.event });
  expect(await refusalOf(after, blank)).toEqual(["fixator-event-without-fixator: event 0 eventType"]);
});

test("days of an undated line are refused beside a dated person that came alone, whichever comes first", async () => {
  const undated = rowsOf({ segment: [aSegment(1, { surgeryDay: 20_200_001, surgeryYear: 2020 })] });
  const person = rowsOf({ person: [aPerson(1)] });
  const after = await fresh(checkRows);
  await after.commit(person, { at });
  expect(await refusalOf(after, undated)).toEqual(["line-differs: segment 0 surgeryDay"]);
  const before = await fresh(checkRows);
  await before.commit(undated, { at });
  expect(await refusalOf(before, person)).toEqual(["line-differs: segment null surgeryDay"]);
});

test("a question that only the merged row raises is counted with the batch, not refused", async () => {
  const registry = await fresh(checkRows);
  await registry.commit(rowsOf({ person: [aPerson(1)], segment: [aSegment(1, { consolidationDay: 1050, gainMm: 50 })] }), { at });
  const end = rowsOf({ segment: [aSegment(1, { distractionStartDay: 1005, distractionEndDay: 1060 })] });
  expect(await registry.commit(end, { at, findings: { "months-converted": 1 } })).toMatchObject({
    batch: 2,
    asks: { "premature-consolidation-or-slip": 1 },
  });
  const db = new Database(join(registry.folder, "registry.sqlite"), { readonly: true });
  expect(db.prepare("SELECT batch, code, count FROM batch_finding ORDER BY code").raw().all()).toEqual([
    [2, "months-converted", 1],
    [2, "premature-consolidation-or-slip", 1],
  ]);
  db.close();
  expect((await heldBy(registry)).find(({ table }) => table === "segment")?.row).toMatchObject({
    consolidationDay: 1050,
    distractionEndDay: 1060,
  });
});
