import { expect, test } from "vitest";
import { defaultSettings, UnitKeyRefused } from "@/lib/registry";
import { at, fresh } from "./folder";
import { aPerson, rowsOf } from "./rows";

const sealed = (letter: string) => ({ iterations: 600_000, salt: letter.repeat(24), iv: letter.repeat(16), sealed: letter.repeat(64) });
const key = { keyId: "KEY000000001", byPassphrase: sealed("A"), byRecovery: sealed("B") };
const another = { ...key, keyId: "KEY000000002" };
const rows = rowsOf({ person: [aPerson(1)] });

test("the first intake's key is kept, in both sealed forms", async () => {
  const registry = await fresh();
  expect(await registry.unitKey()).toBe(null);
  await registry.commit(rows, { at, unitKey: key });
  expect(await registry.unitKey()).toEqual(key);
});

test("the same key sealed again replaces its seals; the old ones open nothing any more", async () => {
  const registry = await fresh();
  await registry.commit(rows, { at, unitKey: key });
  await registry.saveUnitKey({ ...key, byPassphrase: sealed("C") });
  expect(await registry.unitKey()).toEqual({ ...key, byPassphrase: sealed("C") });
});

test("another key is refused, and rows named by it with it", async () => {
  const registry = await fresh();
  await registry.commit(rows, { at, unitKey: key });
  await expect(registry.saveUnitKey(another)).rejects.toThrow(UnitKeyRefused);
  await expect(registry.commit(rowsOf({ person: [aPerson(2)] }), { at, unitKey: another })).rejects.toThrow(UnitKeyRefused);
  expect(await registry.unitKey()).toEqual(key);
  expect(await registry.state()).toEqual({ batch: 1, erasures: 0 });
});

test("a refused first commit keeps no key", async () => {
  const registry = await fresh(() => [
    {
      code: "not-a-code",
      severity: "error",
      file: null,
      row: null,
      column: null,
      field: "sex",
      found: "text",
      expected: "a code",
      mend: "",
    },
  ]);
  await expect(registry.commit(rows, { at, unitKey: key })).rejects.toThrow("1 not-a-code");
  expect(await registry.unitKey()).toBe(null);
});

test("settings hold by default, change as a batch of their own, and can be undone", async () => {
  const registry = await fresh();
  expect(await registry.settings()).toEqual(defaultSettings);
  expect(await registry.saveSettings(defaultSettings, { at })).toEqual({ batch: null });
  const changed = { ...defaultSettings, units: ["unit-1", "north"], auditYearStartsIn: 4 };
  expect(await registry.saveSettings(changed, { at })).toEqual({ batch: 1 });
  expect(await registry.saveSettings(changed, { at })).toEqual({ batch: null });
  expect(await registry.saveSettings({ ...changed, yearOnly: true }, { at })).toEqual({ batch: 2 });
  expect([await registry.settings(0), await registry.settings(1), (await registry.settings()).yearOnly]).toEqual([
    defaultSettings,
    changed,
    true,
  ]);
  expect((await registry.batches()).map(({ kind }) => kind)).toEqual(["settings", "settings"]);
  expect(await registry.undo(1, { at })).toEqual({ blockedBy: [2] });
  await registry.undo(2, { at });
  expect(await registry.settings()).toEqual(changed);
  expect(await registry.contentHash()).toBe(await registry.contentHash(0));
});

test.each([
  ["units", { units: [] }],
  ["units.0", { units: ["Our Unit"] }],
  ["auditYearStartsIn", { auditYearStartsIn: 13 }],
  ["toleranceMm", { toleranceMm: -1 }],
  ["scores.0.range", { scores: [{ code: "a-score", range: [10, 0] as const, direction: "higher" as const, minimalDifference: null }] }],
])("settings with wrong %s are refused by name", async (name, wrong) => {
  const registry = await fresh();
  await expect(registry.saveSettings({ ...defaultSettings, ...wrong }, { at })).rejects.toThrow(`received ${name} that can't be`);
  expect(await registry.batches()).toEqual([]);
});

test("a cohort is kept under a name, and under no person's name or number", async () => {
  const registry = await fresh();
  for (const name of ["femora-2023", "magnetic-nails", "short-stature-24-months"]) await registry.saveCohort({ name, where: "{}" });
  const kept = await registry.cohorts();
  expect(kept).toHaveLength(3);
  for (const name of ["mr-quellthorpe", "of-dr-ardvenna", "0187741", "case-187741", "Femora", "femora.2023"])
    await expect(registry.saveCohort({ name, where: "{}" })).rejects.toThrow(RangeError);
  expect(await registry.cohorts()).toEqual(kept);
});
