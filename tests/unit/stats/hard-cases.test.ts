import { describe, expect, test } from "vitest";
import { listMethods, runMethod } from "@/lib/stats";

type Input = Readonly<Record<string, unknown>>;
type Change = (input: Input) => Input;

const methods = listMethods().map(({ id, example }) => ({ id, example: example.input as Input }));

/** Columns of measurements; the others are labels, events, counts or settings. */
const measured = ["values", "numerator", "denominator", "times", "after", "by", "exposure", "weights"];
const columns = [...measured, "patient", "group", "event", "events", "design", "entry", "first", "second", "x", "n"];

const scaled = (size: number): Change =>
  onColumns(measured, (column) => column.map((value) => (typeof value === "number" ? value * size : value)));
const all = (names: readonly string[], value: unknown): Change => onColumns(names, (column) => column.map(() => value));

/** Changes some columns of an input; settings that are numbers stay. */
function onColumns(names: readonly string[], change: (column: readonly unknown[]) => readonly unknown[]): Change {
  return (input) =>
    Object.fromEntries(
      Object.entries(input).map(([name, value]) => [name, names.includes(name) && Array.isArray(value) ? change(value) : value]),
    );
}

const changes: readonly (readonly [what: string, change: Change])[] = [
  ["sizes of 1e-300", scaled(1e-300)],
  ["sizes of 1e15", scaled(1e15)],
  ["equal values", all(measured, 7)],
  ["zeros", all(measured, 0)],
  ["one patient", all(["patient"], "a")],
  ["two patients", onColumns(["patient"], (column) => column.map((_, i) => i % 2))],
  ["one group", all(["group"], "a")],
  ["no event", all(["event", "events"], 0)],
  ["all events", all(["event"], 1)],
  ["one row", onColumns(columns, (column) => column.slice(0, 1))],
  ["two rows", onColumns(columns, (column) => column.slice(0, 2))],
  ["no row", onColumns(columns, () => [])],
  ["a column short", onColumns(["patient", "event", "group", "second", "n"], (column) => column.slice(1))],
  ["negative values", scaled(-1)],
  ["confidence nearly one", (input) => ({ ...input, confidence: 0.999999 })],
];

/** A record that says all it says in JSON: no NaN, no Infinity, nothing undefined lost in a list. */
function expectClean(record: unknown, at: string): void {
  if (typeof record === "number") expect(Number.isFinite(record), `${at} is ${record}`).toBe(true);
  else if (Array.isArray(record)) for (const [i, one] of record.entries()) expectClean(one, `${at}[${i}]`);
  else if (record !== null && typeof record === "object")
    for (const [name, one] of Object.entries(record)) expectClean(one, `${at}.${name}`);
}

describe.each(methods)("$id", ({ id, example }) => {
  test.each(changes)("%s: a clean record, or a refusal that says what is required", (_, change) => {
    let record: unknown;
    try {
      record = runMethod(id, change(example));
    } catch (error) {
      expect(error instanceof RangeError || error instanceof TypeError, String(error)).toBe(true);
      expect((error as Error).message).toMatch(/requires .+, received .+/);
      return;
    }
    expectClean(record, id);
  });
});
