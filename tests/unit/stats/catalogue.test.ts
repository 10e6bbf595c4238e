import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { listMethods, runMethod, wilson } from "@/lib/stats";

/** Files beside the methods that are no method. */
const shared = ["index", "notes", "record", "require", "thresholds"];
const files = readdirSync("lib/stats")
  .filter((file) => file.endsWith(".ts"))
  .map((file) => file.slice(0, -3))
  .filter((name) => !shared.includes(name));
const methods = listMethods();

test("every method file has an entry, and every entry a file", () => {
  expect(methods.map(({ id }) => id)).toEqual([...files].sort());
});

describe.each(methods)("$id", ({ id, title, input, example }) => {
  test("its example runs, and gives the output listed", () => {
    expect(runMethod(id, example.input)).toEqual(example.output);
    expect(Object.keys(example.output)).toContain("notes");
  });

  test("it survives JSON: no NaN, no Infinity, nothing lost", () => {
    expect(JSON.parse(JSON.stringify(example.output))).toEqual(example.output);
  });

  test("its input is a JSON Schema of an object that allows nothing else", () => {
    expect(title).toMatch(/^[A-Za-z]/);
    expect(input).toMatchObject({ type: "object", additionalProperties: false });
    expect(Object.keys(input.properties ?? {})).toEqual(expect.arrayContaining(Object.keys(example.input as object)));
  });

  test("an empty input is refused by name", () => {
    expect(() => runMethod(id, {})).toThrow(new RegExp(`^(stats ${id}|\\w+) requires .*, received `));
  });
});

describe("what a refusal says", () => {
  test.each([
    [{ x: "5", n: 20 }, "stats wilson requires x to be a number, received a text"],
    [{ x: 5 }, "stats wilson requires n to be a number, received nothing"],
    [{ x: 0.5, n: 20 }, "stats wilson requires x to be a whole number, received 0.5"],
    [{ x: -1, n: 20 }, "stats wilson requires x to be at least 0, received -1"],
    [{ x: 1, n: 0 }, "stats wilson requires n to be above 0, received 0"],
    [{ x: 1, n: 20, confidence: 1 }, "stats wilson requires confidence to be below 1, received 1"],
    [{ x: 1, n: 20, who: "a name" }, "stats wilson requires the input to hold no other field than its own, received one more"],
    [{ x: 1, n: 20, a: 1, b: 2 }, "stats wilson requires the input to hold no other field than its own, received 2 more"],
    [[1, 20], "stats wilson requires the input to be an object, received a list of 2"],
    [null, "stats wilson requires the input to be an object, received null"],
    [{ x: 30, n: 20 }, "wilson requires"],
  ])("%j", (input, message) => {
    expect(() => runMethod("wilson", input)).toThrow(message);
  });

  test.each([
    ["cr2-mean", { values: [1, null], patient: [1, 2] }, "stats cr2-mean requires values[1] to be a number, received null"],
    ["cr2-mean", { values: [1], patient: [true] }, "stats cr2-mean requires patient[0] to be a text or a number, received true or false"],
    ["quantile", { values: [1], p: 2 }, "stats quantile requires p to be at most 1, received 2"],
    ["quantile", { values: [1], p: 0.5, type: 5 }, "stats quantile requires type to be"],
    [
      "kaplan-meier",
      { times: [1], event: [1], limits: "other" },
      "stats kaplan-meier requires limits to be one of log-log, log, plain, received a text",
    ],
    ["lms", { value: 1, at: 1, table: [{ at: 1, L: 1, M: 0, S: 1 }] }, "stats lms requires table[0].M to be above 0, received 0"],
    ["fisher-exact", { table: 5 }, "stats fisher-exact requires table to be a list, received 5"],
    ["no-such", {}, "stats requires the id of a method, as stats --list gives them, received another word"],
  ])("%s %j", (id, input, message) => {
    expect(() => runMethod(id, input)).toThrow(message);
  });

  test("all faults at once, and never the text of a cell", () => {
    const ask = () => runMethod("cr2-mean", { values: ["Jane"], patient: 3 });
    expect(ask).toThrow("values[0] to be a number, received a text; patient to be a list, received 3");
    expect(ask).not.toThrow(/Jane/);
  });
});

test("what is left out takes the method's own default", () => {
  expect(runMethod("wilson", { x: 15, n: 148 })).toEqual({ ...wilson({ x: 15, n: 148 }) });
});
