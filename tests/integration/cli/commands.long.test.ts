import { beforeAll, expect, test } from "vitest";
import { shapes } from "../../docs/commands";
import { aUnit, lengthbook } from "./run";

/** A line whose answer has each shape of docs/ids.md, in an order in which each finds what it asks for. */
const unit = aUnit();
const numbers = unit.file("two.txt", "0426024\n0475875\n");
const between = "device=magnetic-nail,circular-fixator";
const lines: readonly (readonly [command: string, when: string, ...words: string[]])[] = [
  ["batches", ""],
  ["casebook", "", "--limit", "2"],
  ["casebook", "CASE", "1"],
  ["completeness", ""],
  ["settings", ""],
  ["measure", "--list", "--list"],
  ["compare", "two groups", "gain", "--between", between],
  ["compare", "three groups or more", "gain", "--between", `${between},monolateral-fixator`],
  ["compare", "several outcomes of three groups or more", "gain,gain-error", "--between", `${between},monolateral-fixator`],
  ["compare", "several outcomes", "gain,surgery-to-consolidation", "--between", between],
  ["complications", ""],
  ["outcome", "", "gain-against-plan"],
  ["follow-up", ""],
  ["cohort", "save", "save", "femora", '{"bone":["femur"]}'],
  ["cohort", "list", "list"],
  ["cohort", "show", "show", "femora"],
  ["stats", "--list", "--list"],
  ["correct", "", "1", "person", "1", "smoking", "--clear"],
  ["undo", "", "2"],
];

beforeAll(() => {
  const secret = ["--passphrase-file", unit.secret, "--dates", "ymd", "--json"];
  const { code, err, json } = lengthbook(unit.data, "intake", "demo-data/seven-years.csv", ...secret);
  if (code !== 0) throw new Error(err);
  expect(Object.keys(json as object)).toEqual(expect.arrayContaining([...keysOf("intake", "")]));
}, 120_000);

function keysOf(command: string, when: string): readonly string[] {
  const shape = shapes[command]?.[when];
  if (!shape) throw new Error(`no shape of ${command} ${when} is documented`);
  return Object.keys(shape.keys);
}

test.each(lines)(
  "%s (%s) answers with the keys that the docs name",
  (command, when, ...words) => {
    const { code, json, err } = lengthbook(unit.data, command, ...words, "--json");
    expect(code, err).toBe(0);
    const one = Array.isArray(json) ? json[0] : json;
    expect(Array.isArray(json)).toBe(shapes[command]?.[when]?.list === true);
    expect(Object.keys(one)).toEqual(expect.arrayContaining([...keysOf(command, when)]));
  },
  60_000,
);

test("a measure, and the answer again by its reference", () => {
  const { json } = lengthbook(unit.data, "measure", "gain", "--json");
  expect(Object.keys(json as object)).toEqual(expect.arrayContaining([...keysOf("measure", "ID")]));
  const again = lengthbook(unit.data, "result", (json as { stamp: string }).stamp, "--json");
  expect(Object.keys(again.json as object)).toEqual(expect.arrayContaining([...keysOf("result", "")]));
}, 60_000);

test("two numbers joined, and parted", () => {
  const joined = lengthbook(unit.data, "join", "--numbers-file", numbers, "--passphrase-file", unit.secret, "--json");
  expect(joined.code, joined.err).toBe(0);
  expect(Object.keys(joined.json as object)).toEqual(expect.arrayContaining([...keysOf("join", "")]));
  const parted = lengthbook(unit.data, "part", String((joined.json as { joined: number }).joined), "--json");
  expect(parted.code, parted.err).toBe(0);
  expect(Object.keys(parted.json as object)).toEqual(expect.arrayContaining([...keysOf("part", "")]));
}, 60_000);
