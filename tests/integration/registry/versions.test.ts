import { expect, test } from "vitest";
import { at, fresh, freshWithLists } from "./folder";
import { anEvent, aPerson, aSegment, aVisit, row, rowsOf } from "./rows";

test("every version of a person's rows, each with the batches between which it held, and nobody else's", async () => {
  const registry = await fresh();
  const first = rowsOf({ person: [aPerson(1), aPerson(2)], segment: [aSegment(1, { gainMm: 50 }), aSegment(2, { gainMm: 30 })] });
  await registry.commit(first, { at });
  await registry.commit(
    rowsOf({ segment: [aSegment(1, { gainMm: 52 })], visit: [aVisit(1, 1030, { cortices: 2 })], event: [anEvent(1)] }),
    { at },
  );
  await registry.undo(2, { at });
  const versions = await registry.versionsOf(1);
  expect(versions.map(({ table, entity, segmentEntity, since, until }) => [table, entity, segmentEntity, since, until])).toEqual([
    ["person", 1, null, 1, null],
    ["segment", 1, 1, 1, 2],
    ["segment", 1, 1, 2, 3],
    ["segment", 1, 1, 3, null],
    ["visit", 1, 1, 2, 3],
    ["event", 1, null, 2, 3],
  ]);
  expect(versions.flatMap((one) => (one.table === "segment" ? [one.row.gainMm] : []))).toEqual([50, 52, 50]);
  expect(versions[0]?.row).toEqual(aPerson(1));
  expect(versions.find(({ table }) => table === "visit")?.row).toEqual(aVisit(1, 1030, { cortices: 2 }));
});

test("body measures and scores stand with their person; nobody has none", async () => {
  const registry = await freshWithLists();
  const score = row("score", { person: aPerson(1).person, scoreCode: "a-score", scoreDay: 7, scoreValue: 61.5 });
  const measure = row("bodyMeasure", { person: aPerson(1).person, bodyDay: 990, statureMm: 1600 });
  await registry.commit(rowsOf({ person: [aPerson(1)], bodyMeasure: [measure], score: [score] }), { at });
  const versions = await registry.versionsOf(1);
  expect(versions.map(({ row: held }) => held)).toEqual([aPerson(1), measure, score]);
  expect(await registry.versionsOf(2)).toEqual([]);
});
