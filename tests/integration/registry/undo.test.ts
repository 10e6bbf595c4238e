import { expect, test } from "vitest";
import { at, fresh, heldBy } from "./folder";
import { aPerson, aSegment, aVisit, rowsOf } from "./rows";

const one = rowsOf({ person: [aPerson(1)], segment: [aSegment(1, { gainMm: 50 })] });
const two = rowsOf({ person: [aPerson(2)], segment: [aSegment(1, { gainMm: 52 }), aSegment(2)] });

test("undo puts back what held before, as a new batch; undo of the undo is redo", async () => {
  const registry = await fresh();
  const first = await registry.commit(one, { at });
  const second = await registry.commit(two, { at });
  const undone = await registry.undo(2, { at });
  expect(undone).toEqual({ batch: 3, undoes: 2, contentHash: first.contentHash });
  expect((await heldBy(registry)).map(({ row }) => row)).toMatchObject([{ person: aPerson(1).person }, { gainMm: 50 }]);
  expect(await registry.undo(3, { at })).toEqual({ batch: 4, undoes: 3, contentHash: second.contentHash });
  expect(await registry.undo(4, { at })).toEqual({ batch: 5, undoes: 4, contentHash: first.contentHash });
  const kinds = (await registry.batches()).map(({ kind, undoes, counts }) => [kind, undoes, counts.persons, counts.segments]);
  expect(kinds).toEqual([
    ["intake", null, 1, 1],
    ["intake", null, 1, 2],
    ["undo", 2, 1, 2],
    ["undo", 3, 1, 2],
    ["undo", 4, 1, 2],
  ]);
});

test("undo of everything leaves an empty registry, and the same rows come in again as new", async () => {
  const registry = await fresh();
  const empty = await registry.contentHash();
  const { contentHash } = await registry.commit(one, { at });
  expect(await registry.undo(1, { at })).toMatchObject({ contentHash: empty });
  expect(await heldBy(registry)).toEqual([]);
  const again = await registry.commit(one, { at });
  expect(again).toMatchObject({ batch: 3, committed: { persons: 1, segments: 1 }, contentHash });
});

test("every batch's content hash can be worked out again later", async () => {
  const registry = await fresh();
  await registry.commit(one, { at });
  await registry.commit(two, { at });
  await registry.undo(2, { at });
  const batches = await registry.batches();
  expect(await Promise.all(batches.map(({ batch }) => registry.contentHash(batch)))).toEqual(batches.map(({ contentHash }) => contentHash));
  await expect(registry.contentHash(4)).rejects.toThrow("the registry requires a batch of 0 to 3, received 4");
});

test("a later batch that touched the same rows blocks the undo and is named", async () => {
  const registry = await fresh();
  await registry.commit(one, { at });
  await registry.commit(two, { at });
  await registry.commit(rowsOf({ segment: [aSegment(1, { gainMm: 53 })] }), { at });
  await registry.commit(rowsOf({ person: [aPerson(7)] }), { at });
  const before = await registry.state();
  expect(await registry.undo(1, { at })).toEqual({ blockedBy: [2, 3] });
  expect(await registry.undo(2, { at })).toEqual({ blockedBy: [3] });
  expect(await registry.state()).toEqual(before);
  expect(await registry.undo(4, { at })).toMatchObject({ undoes: 4 });
  expect(await registry.undo(3, { at })).toMatchObject({ undoes: 3 });
  // a batch undone is touched by its undo: the undo is what there is to undo now
  expect(await registry.undo(3, { at })).toEqual({ blockedBy: [6] });
});

test("a batch and its undo cancel out: batches are undone one after the other, the last one first", async () => {
  const registry = await fresh();
  const first = await registry.commit(one, { at });
  await registry.commit(rowsOf({ segment: [aSegment(1, { gainMm: 51 })] }), { at });
  await registry.commit(rowsOf({ segment: [aSegment(1, { gainMm: 52 })] }), { at });
  expect(await registry.undo(3, { at })).toMatchObject({ batch: 4 });
  expect(await registry.undo(2, { at })).toMatchObject({ batch: 5, contentHash: first.contentHash });
  expect(await registry.undo(4, { at })).toEqual({ blockedBy: [5] });
  expect(await registry.undo(5, { at })).toMatchObject({ batch: 6 });
  // the undo of 3 is undone: 3 stands again
  const redone = await registry.undo(4, { at });
  expect(redone).toMatchObject({ batch: 7, contentHash: await registry.contentHash(3) });
  expect(await registry.undo(2, { at })).toEqual({ blockedBy: [3] });
});

test("a row whose segment is taken back waits for it, and is there again when the segment is", async () => {
  const registry = await fresh();
  const segments = async (state: number) => (await registry.frameAsOf({ batch: state, erasures: 0 }, "visit", [])).length;
  await registry.commit(one, { at });
  const { contentHash } = await registry.commit(rowsOf({ visit: [aVisit(1, 1030)] }), { at });
  expect(await registry.undo(1, { at })).toMatchObject({ batch: 3, undoes: 1 });
  expect((await heldBy(registry)).map(({ table }) => table)).toEqual(["visit"]);
  expect(await registry.waiting()).toMatchObject({ visits: 1, events: 0 });
  expect([await segments(2), await segments(3)]).toEqual([1, 0]);
  expect(await registry.undo(3, { at })).toMatchObject({ batch: 4, contentHash });
  expect(await registry.waiting()).toMatchObject({ visits: 0 });
  expect(await segments(4)).toBe(1);
});

test.each([0, -1, 2, 1.5, Number.NaN])("there is no batch %s to undo", async (batch) => {
  const registry = await fresh();
  await registry.commit(one, { at });
  await expect(registry.undo(batch, { at })).rejects.toThrow(`undo requires a batch of 1 to 1, received ${batch}`);
});
