import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { correctionReasons } from "@/lib/codebook";
import { checkRows } from "@/lib/intake";
import { type Registry, RowsRefused } from "@/lib/registry";
import { at, fresh, heldBy } from "./folder";
import { aPerson, aSegment, aVisit, rowsOf } from "./rows";

const sheet = (gainMm: number | null, more: object = {}) => rowsOf({ person: [aPerson(1)], segment: [aSegment(1, { gainMm, ...more })] });
const gain = { table: "segment", entity: 1, field: "gainMm", reason: "typing-error", at } as const;
const gainOf = async (registry: Registry) =>
  (await heldBy(registry)).flatMap(({ table, row }) => (table === "segment" ? [(row as { gainMm: number | null }).gainMm] : []))[0];

describe("a correction", () => {
  test("is a batch of its own, and holds while the sheet says what it said", async () => {
    const registry = await fresh();
    await registry.commit(sheet(50), { at });
    expect(await registry.correct({ ...gain, value: 52 })).toMatchObject({ batch: 2 });
    expect(await registry.commit(sheet(50), { at })).toMatchObject({ batch: null, asks: {} });
    expect(await gainOf(registry)).toBe(52);
    const [, batch] = await registry.batches();
    expect(batch).toMatchObject({ kind: "correction", counts: { segments: 1, persons: 0 } });
    expect(await registry.corrections()).toMatchObject([
      { table: "segment", entity: 1, field: "gainMm", sheet: 50, value: 52, reason: "typing-error", since: 2 },
    ]);
  });

  test("leaves the other fields of the row to the sheet", async () => {
    const registry = await fresh();
    await registry.commit(sheet(50), { at });
    await registry.correct({ ...gain, value: 52 });
    await registry.commit(sheet(50, { device: "magnetic-nail", plannedGainMm: 55 }), { at });
    const segment = (await heldBy(registry)).find(({ table }) => table === "segment")?.row;
    expect(segment).toMatchObject({ gainMm: 52, device: "magnetic-nail", plannedGainMm: 55 });
  });

  test("clears a field, and the sheet that still says it doesn't fill it again", async () => {
    const registry = await fresh();
    await registry.commit(sheet(50), { at });
    await registry.correct({ ...gain, value: null, reason: "clearing" });
    await registry.commit(sheet(50), { at });
    expect(await gainOf(registry)).toBeNull();
  });

  test("a value unlike both is held back and counted; asked about and chosen, it is taken, and the correction ends", async () => {
    const registry = await fresh();
    await registry.commit(sheet(50), { at });
    await registry.correct({ ...gain, value: 52 });
    expect(await registry.commit(sheet(51, { device: "magnetic-nail" }), { at })).toMatchObject({
      batch: 3,
      asks: { "changed-since-last": 1 },
    });
    expect(await gainOf(registry)).toBe(52);
    expect(await registry.commit(sheet(51), { at })).toMatchObject({ batch: null, asks: { "changed-since-last": 1 } });
    expect(await registry.commit(sheet(51), { at, overCorrections: 1 })).toMatchObject({ batch: 4, changed: { segments: 1 }, asks: {} });
    expect(await gainOf(registry)).toBe(51);
    expect(await registry.corrections()).toEqual([]);
    // the sheet has the word again
    await registry.commit(sheet(50), { at });
    expect(await gainOf(registry)).toBe(50);
  });

  test("one made since the person was asked is not taken over unseen", async () => {
    const registry = await fresh();
    await registry.commit(sheet(50, { plannedGainMm: 55 }), { at });
    await registry.correct({ ...gain, value: 52 });
    await registry.correct({ ...gain, field: "plannedGainMm", value: 60 });
    const refused = await registry.commit(sheet(51, { plannedGainMm: 56 }), { at, overCorrections: 1 }).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(RowsRefused);
    expect(refused).toMatchObject({ findings: [{ code: "changed-since-last" }] });
    await expect((await fresh()).commit(sheet(50), { at, overCorrections: 1 })).rejects.toBeInstanceOf(RowsRefused);
    expect((await registry.state()).batch).toBe(3);
  });

  test("undone, the sheet's value holds; the undo of a sheet that took over gives the correction back", async () => {
    const registry = await fresh();
    const { contentHash } = await registry.commit(sheet(50), { at });
    await registry.correct({ ...gain, value: 52 });
    expect(await registry.undo(2, { at })).toMatchObject({ batch: 3, contentHash });
    expect(await registry.corrections()).toEqual([]);
    await registry.undo(3, { at });
    await registry.commit(sheet(51), { at, overCorrections: 1 });
    expect(await registry.corrections()).toEqual([]);
    await registry.undo(5, { at });
    expect(await gainOf(registry)).toBe(52);
    expect(await registry.corrections()).toMatchObject([{ sheet: 50, value: 52 }]);
    expect(await registry.undo(1, { at })).toMatchObject({ blockedBy: [2] });
  });

  test("corrected again it remembers the sheet; corrected back, nothing is left to remember", async () => {
    const registry = await fresh();
    await registry.commit(sheet(50), { at });
    await registry.correct({ ...gain, value: 52 });
    await registry.correct({ ...gain, value: 53, reason: "source-checked" });
    expect(await registry.corrections()).toMatchObject([{ sheet: 50, value: 53, reason: "source-checked", since: 3 }]);
    expect(await registry.correct({ ...gain, value: 53 })).toMatchObject({ batch: null });
    await registry.correct({ ...gain, value: 50 });
    expect(await registry.corrections()).toEqual([]);
  });

  test("a correction made by hand and a sheet mended give the same content", async () => {
    const [byHand, mended] = [await fresh(), await fresh()];
    await byHand.commit(sheet(50), { at });
    const { contentHash } = await byHand.correct({ ...gain, value: 52 });
    expect((await mended.commit(sheet(52), { at })).contentHash).toBe(contentHash);
  });

  test("flags, codes and days are remembered as they are", async () => {
    const registry = await fresh();
    await registry.commit(sheet(50, { canalVented: true, device: "magnetic-nail", consolidationDay: 1200 }), { at });
    await registry.correct({ ...gain, field: "canalVented", value: false });
    await registry.correct({ ...gain, field: "device", value: "mechanical-nail" });
    await registry.correct({ ...gain, field: "consolidationDay", value: 1210 });
    expect((await registry.corrections()).map(({ field, sheet: said, value }) => [field, said, value])).toEqual([
      ["canalVented", true, false],
      ["device", "magnetic-nail", "mechanical-nail"],
      ["consolidationDay", 1200, 1210],
    ]);
    expect(await registry.commit(sheet(50, { canalVented: true, device: "magnetic-nail", consolidationDay: 1200 }), { at })).toMatchObject({
      batch: null,
    });
  });
});

describe("refused", () => {
  test.each([
    [{ field: "surgeryDay", value: 1001 }, "names the row"],
    [{ field: "surgeon", value: "0".repeat(26) }, "names the row"],
    [{ field: "auditYear", value: 2021 }, "is made from others"],
    [{ field: "healingStatus", value: "healed" }, "isn't one"],
    [{ field: "__proto__", value: 1 }, "isn't one"],
    [{ reason: "Dr Smith said so" as "other", value: 51 }, `a reason among ${correctionReasons.join(", ")}`],
    [{ entity: 9, value: 51 }, "a row that is held"],
    [{ table: "shoe" as "visit", value: 51 }, "isn't one"],
  ])("%o", async (change, words) => {
    const registry = await fresh();
    await registry.commit(sheet(50), { at });
    await expect(registry.correct({ ...gain, ...change } as Parameters<Registry["correct"]>[0])).rejects.toThrow(words);
    expect((await registry.state()).batch).toBe(1);
  });

  test.each([
    ["gainMm", 251],
    ["gainMm", "fifty"],
    ["gainMm", Number.NaN],
    ["device", "Anna Smith"],
    ["canalVented", 1],
    ["surgeryYear", null],
    ["consolidationDay", 1200.5],
  ])("%s as %s, as in any sheet", async (field, value) => {
    const registry = await fresh();
    await registry.commit(sheet(50), { at });
    const refused = await registry.correct({ ...gain, field, value }).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(RowsRefused);
    expect((refused as Error).message).not.toMatch(/Anna|fifty|251/);
    expect((await registry.state()).batch).toBe(1);
  });

  test("what makes the rows of the case wrong together", async () => {
    const registry = await fresh(checkRows);
    await registry.commit(sheet(50, { distractionStartDay: 1005, distractionEndDay: 1055 }), { at });
    const refused = await registry.correct({ ...gain, field: "distractionEndDay", value: 1003 }).catch((error: unknown) => error);
    expect(refused).toMatchObject({ name: "RowsRefused", findings: [{ code: "days-out-of-order", table: "segment" }] });
    expect(await registry.correct({ ...gain, field: "distractionEndDay", value: 1056 })).toMatchObject({ batch: 2 });
  });
});

describe("of a patient with two numbers", () => {
  const days = 40;
  const second = (gainMm: number, more: object = {}) =>
    rowsOf({ person: [aPerson(2)], segment: [aSegment(2, { surgeryDay: 1000 - days, gainMm, ...more })] });
  async function joined() {
    const registry = await fresh();
    await registry.commit(sheet(50), { at });
    await registry.commit(second(50, { consolidationDay: 1200 - days }), { at });
    await registry.join({ person: 2, into: 1, days, at });
    return registry;
  }
  const shown = async (registry: Registry) => (await registry.rowsOf(1)).find(({ table }) => table === "segment");

  test("a sheet of either number that says what it said leaves it standing", async () => {
    const registry = await joined();
    await registry.correct({ ...gain, value: 52 });
    await registry.commit(second(50), { at });
    await registry.commit(sheet(50), { at });
    expect((await shown(registry))?.row).toMatchObject({ gainMm: 52 });
    expect(await registry.commit(second(51), { at })).toMatchObject({ batch: null, asks: { "changed-since-last": 1 } });
    await registry.commit(second(51), { at, overCorrections: 1 });
    expect((await shown(registry))?.row).toMatchObject({ gainMm: 51 });
  });

  test("clearing clears it under both, and a day is of the patient's line", async () => {
    const registry = await joined();
    await registry.correct({ ...gain, field: "consolidationDay", value: 1210 });
    expect((await shown(registry))?.row).toMatchObject({ consolidationDay: 1210 });
    await registry.correct({ ...gain, field: "consolidationDay", value: null, reason: "clearing" });
    expect((await shown(registry))?.row).toMatchObject({ consolidationDay: null });
    await registry.commit(second(50, { consolidationDay: 1200 - days }), { at });
    expect((await shown(registry))?.row).toMatchObject({ consolidationDay: null });
  });
});

// A model of the promise: what is held of each field, and what the sheet said of a corrected one.
type Held = { readonly value: number | null; readonly sheet: number | null | undefined };
const fields = ["gainMm", "plannedGainMm"] as const;
type Model = Readonly<Record<(typeof fields)[number], Held>>;
type Step =
  | { readonly commit: readonly (number | null)[]; readonly take: boolean }
  | { readonly correct: 0 | 1; readonly value: number | null }
  | { readonly undo: true };

const number = fc.constantFrom(null, 40, 50, 60);
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ commit: fc.tuple(number, number), take: fc.boolean() }) },
  { weight: 4, arbitrary: fc.record({ correct: fc.constantFrom(0 as const, 1 as const), value: number }) },
  { weight: 2, arbitrary: fc.constant({ undo: true as const }) },
);

const conflicts = (held: Held, said: number | null) =>
  said !== null && held.sheet !== undefined && said !== held.sheet && said !== held.value;

function brought(held: Held, said: number | null, take: boolean): Held {
  if (said === null || (held.sheet !== undefined && !conflicts(held, said))) return held;
  return held.sheet === undefined || take ? { value: said, sheet: undefined } : held;
}

function corrected(held: Held, value: number | null): Held {
  if (value === held.value) return held;
  const sheet = held.sheet === undefined ? held.value : held.sheet;
  return { value, sheet: value === sheet ? undefined : sheet };
}

const seen = { heldBack: 0, taken: 0, corrections: 0, undos: 0 };

async function walk(registry: Registry, steps: readonly Step[]): Promise<Model> {
  const empty: Model = { gainMm: { value: null, sheet: undefined }, plannedGainMm: { value: null, sheet: undefined } };
  const snapshots: Model[] = [empty];
  await registry.commit(sheet(null), { at });
  for (const one of steps) {
    const now = snapshots.at(-1) ?? empty;
    let next = now;
    if ("commit" in one) {
      const [gainMm = null, plannedGainMm = null] = one.commit;
      const cells = { gainMm, plannedGainMm };
      const asked = fields.filter((field) => conflicts(now[field], cells[field])).length;
      const { asks } = await registry.commit(sheet(gainMm, { plannedGainMm }), {
        at,
        ...(one.take && asked > 0 ? { overCorrections: asked } : {}),
      });
      expect(asks["changed-since-last"] ?? 0).toBe(one.take ? 0 : asked);
      seen[one.take ? "taken" : "heldBack"] += asked;
      next = { gainMm: brought(now.gainMm, gainMm, one.take), plannedGainMm: brought(now.plannedGainMm, plannedGainMm, one.take) };
    } else if ("correct" in one) {
      const field = fields[one.correct];
      await registry.correct({ ...gain, field, value: one.value });
      next = { ...now, [field]: corrected(now[field], one.value) };
      seen.corrections += 1;
    } else {
      const { batch } = await registry.state();
      if (batch === 1) continue;
      await registry.undo(batch, { at });
      seen.undos += 1;
      // the newest batch undone: what held before it; undoing that undo gives it again
      snapshots.push(snapshots.at(-2) ?? empty);
      continue;
    }
    if ((await registry.state()).batch === snapshots.length + 1) snapshots.push(next);
    else expect(next).toEqual(now);
  }
  return snapshots.at(-1) ?? empty;
}

test("any walk of sheets, corrections and undos holds what the promise says", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 2, maxLength: 14 }), async (steps) => {
      const registry = await fresh();
      const model = await walk(registry, steps);
      expect((await registry.rowsOf(1)).find(({ table }) => table === "segment")?.row).toMatchObject({
        gainMm: model.gainMm.value,
        plannedGainMm: model.plannedGainMm.value,
      });
      const standing = (await registry.corrections()).map(({ field, sheet: said, value }) => [field, said, value]);
      expect(standing.sort()).toEqual(
        fields.flatMap((field) => (model[field].sheet === undefined ? [] : [[field, model[field].sheet, model[field].value]])),
      );
      // the content is that of a sheet which says the same: no correction shows in it
      const plain = await fresh();
      await plain.commit(sheet(model.gainMm.value, { plannedGainMm: model.plannedGainMm.value }), { at });
      expect(await registry.contentHash()).toBe(await plain.contentHash());
      await registry.close();
      await plain.close();
    }),
    { numRuns: 80 },
  );
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(10);
});

test("files that say what sheet or correction say come in any order", async () => {
  await fc.assert(
    fc.asyncProperty(fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }), async (order) => {
      const files = [
        sheet(50),
        sheet(52),
        sheet(null, { device: "magnetic-nail" }),
        rowsOf({ person: [aPerson(1)], visit: [aVisit(1, 1030, { cortices: 2 })] }),
      ];
      const registry = await fresh();
      await registry.commit(sheet(50), { at });
      await registry.correct({ ...gain, value: 52 });
      for (const i of order) await registry.commit(files[i] ?? sheet(null), { at });
      const mended = await fresh();
      await mended.commit(rowsOf({ ...sheet(52, { device: "magnetic-nail" }), visit: [aVisit(1, 1030, { cortices: 2 })] }), { at });
      expect(await registry.contentHash()).toBe(await mended.contentHash());
      await registry.close();
      await mended.close();
    }),
    { numRuns: 24 },
  );
});
