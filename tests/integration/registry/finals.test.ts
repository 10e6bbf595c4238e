import { expect, test } from "vitest";
import { at, fresh, heldBy } from "./folder";
import { aPerson, personKey, row, rowsOf } from "./rows";

/** A final height without a date of its own, kept on the day last seen. */
const final = (bodyDay: number, statureMm: number) =>
  row("bodyMeasure", { person: personKey(1), bodyDay, statureMm, occasion: "final", bodyDayFrom: "last-follow-up" });
const sheet = (bodyDay: number, statureMm: number) => rowsOf({ person: [aPerson(1)], bodyMeasure: [final(bodyDay, statureMm)] });

async function measuresAfter(...sheets: readonly ReturnType<typeof sheet>[]) {
  const registry = await fresh();
  for (const rows of sheets) await registry.commit(rows, { at });
  const held = (await heldBy(registry))
    .filter(({ table }) => table === "bodyMeasure")
    .map(({ row: one }) => one as { bodyDay: number; statureMm: number });
  return { registry, measures: held.map(({ bodyDay, statureMm }) => [bodyDay, statureMm]), hash: await registry.contentHash() };
}

test("an equal final height on a later day adds no row, whichever sheet comes first", async () => {
  const inOrder = await measuresAfter(sheet(400, 1700), sheet(700, 1700));
  const reversed = await measuresAfter(sheet(700, 1700), sheet(400, 1700));
  const together = await measuresAfter(rowsOf({ person: [aPerson(1)], bodyMeasure: [final(700, 1700), final(400, 1700)] }));
  expect([inOrder.measures, reversed.measures, together.measures]).toEqual([[[400, 1700]], [[400, 1700]], [[400, 1700]]]);
  expect(new Set([inOrder.hash, reversed.hash, together.hash]).size).toBe(1);
});

test("both sheets again change nothing", async () => {
  const { registry } = await measuresAfter(sheet(700, 1700), sheet(400, 1700));
  for (const rows of [sheet(700, 1700), sheet(400, 1700)]) {
    expect(await registry.commit(rows, { at })).toMatchObject({ batch: null, unchanged: { persons: 1, bodyMeasures: 1 } });
  }
});

test("another value on a later day is a row of its own, and so is a measure with its own date", async () => {
  expect((await measuresAfter(sheet(400, 1700), sheet(700, 1695))).measures).toEqual([
    [400, 1700],
    [700, 1695],
  ]);
  const dated = row("bodyMeasure", { person: personKey(1), bodyDay: 700, statureMm: 1700, occasion: "final", bodyDayFrom: "recorded" });
  expect((await measuresAfter(sheet(400, 1700), rowsOf({ bodyMeasure: [dated] }))).measures).toEqual([
    [400, 1700],
    [700, 1700],
  ]);
});

test("undo brings back the measure that was closed", async () => {
  const { registry } = await measuresAfter(sheet(700, 1700), sheet(400, 1700));
  expect(await registry.undo(2, { at })).toMatchObject({ contentHash: await registry.contentHash(1) });
});
