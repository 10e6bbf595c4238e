import { expect, test } from "vitest";
import type { BodyMeasureRow } from "@/lib/codebook";
import { at, fresh, heldBy } from "./folder";
import { aPerson, personKey, row, rowsOf } from "./rows";

type Made = Pick<BodyMeasureRow, "bodyDayFrom" | "occasion">;

/** How a body measure of one person and day is held after these words on it, and its hash. */
async function heldAfter(...words: readonly Made[]) {
  const registry = await fresh();
  for (const [i, made] of words.entries()) {
    const measure = row("bodyMeasure", { person: personKey(1), bodyDay: 1000, ...made, [`${i === 0 ? "stature" : "armSpan"}Mm`]: 1600 });
    await registry.commit(rowsOf({ person: [aPerson(1)], bodyMeasure: [measure] }), { at });
  }
  const held = (await heldBy(registry)).find(({ table }) => table === "bodyMeasure")?.row as Made;
  return [held.bodyDayFrom, held.occasion];
}

const recorded = { bodyDayFrom: "recorded", occasion: "end-of-distraction" } as const;
const before = { bodyDayFrom: "surgery", occasion: "before" } as const;
const final = { bodyDayFrom: "last-follow-up", occasion: "final" } as const;

test.each<[string, Made, Made, Made]>([
  ["a day recorded over one taken from surgery", recorded, before, recorded],
  ["a day recorded over one taken from the last follow-up", recorded, final, recorded],
  ["a day of surgery over one of the last follow-up", before, final, before],
  ["an occasion where the better word has none", { ...recorded, occasion: null }, before, { bodyDayFrom: "recorded", occasion: "before" }],
  ["an occasion over the other of a sheet without moments", { ...before, occasion: "other" }, before, before],
  ["the same, of a weaker word", { ...before, occasion: "other" }, final, { bodyDayFrom: "surgery", occasion: "final" }],
  ["an other that somebody wrote", { ...recorded, occasion: "other" }, final, { bodyDayFrom: "recorded", occasion: "other" }],
])("of two sheets on one measure holds %s, in either order", async (_, one, two, expected) => {
  expect(await heldAfter(one, two)).toEqual([expected.bodyDayFrom, expected.occasion]);
  expect(await heldAfter(two, one)).toEqual([expected.bodyDayFrom, expected.occasion]);
});

test("the sheet's own later word on the occasion is a change, as of any field", async () => {
  expect(await heldAfter(recorded, { ...recorded, occasion: "final" })).toEqual(["recorded", "final"]);
});
