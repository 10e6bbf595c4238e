import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { emptyMapping, prepare, readSheet, type StrippedRows } from "@/lib/intake";
import type { Settings } from "@/lib/registry";
import { emptyRegistry, testRing, today } from "../demo-registry";
import { at } from "./folder";

// The invented unit's sheets, each brought alone and without a look at what is held, in several orders.

const settings = JSON.parse(readFileSync("demo-data/settings.json", "utf8")) as Settings;
const tables = ["persons", "body-measures", "segments", "visits", "events", "scores"].map((name) => `tables/${name}`);

async function rowsOfFile(name: string): Promise<StrippedRows> {
  const file = `demo-data/${name}.csv`;
  const { sheet } = readSheet(readFileSync(file), { file });
  if (!sheet) throw new Error(`${file} was refused`);
  const lists = { units: settings.units, scores: settings.scores.map(({ code }) => code) };
  const { rows, questions } = await prepare({ sheets: [sheet], mapping: emptyMapping, ring: testRing, today, ...lists });
  if (questions.length > 0) throw new Error(`${file} asks ${questions.map(({ code }) => code).join(", ")}`);
  // a sheet of which nothing is read would have one hash in any order
  expect(Object.values(rows).flat().length).toBeGreaterThan(100);
  return rows;
}

const known = new Map<string, Promise<StrippedRows>>();
const rowsOf = (name: string) => {
  const rows = known.get(name) ?? rowsOfFile(name);
  known.set(name, rows);
  return rows;
};

/** The content hash after these files, each a commit of its own; nothing may be left waiting. */
async function hashAfter(files: readonly string[]): Promise<string> {
  await using registry = await emptyRegistry();
  await registry.saveSettings(settings, { at });
  for (const file of files) await registry.commit(await rowsOf(file), { at });
  expect(Object.values(await registry.waiting())).toEqual([0, 0, 0, 0, 0, 0]);
  return registry.contentHash();
}

test.each(["visits", "events", "scores", "segments", "persons"])("%s before the seven years and after give one hash", async (name) => {
  const [first, second] = [`tables/${name}`, "seven-years"];
  expect(await hashAfter([first, second])).toBe(await hashAfter([second, first]));
});

test("the six tables in any order give one hash", async () => {
  const hash = await hashAfter(tables);
  expect(await hashAfter(tables.toReversed())).toBe(hash);
  expect(await hashAfter(["visits", "scores", "events", "segments", "body-measures", "persons"].map((name) => `tables/${name}`))).toBe(
    hash,
  );
});

test("body measures before the seven years and after give one hash: a day recorded holds, whichever came first", async () => {
  expect(await hashAfter(["tables/body-measures", "seven-years"])).toBe(await hashAfter(["seven-years", "tables/body-measures"]));
  const all = [...tables, "seven-years"];
  expect(await hashAfter(all.toReversed())).toBe(await hashAfter(all));
});
