import { expect, test } from "vitest";
import { collectCommit, countFindings, decodeLine, encodeCommit, makeRecoveryCode, sealUnitKey, unitKeyOf, WireError } from "@/lib/intake";
import { load, table } from "./load";

const text = table({
  MRN: ["A1", "A2"],
  Sex: ["F", "M"],
  Bone: ["Femur", "Tibia"],
  Side: ["L", "R"],
  "Op date": ["14/02/2023", "15/03/2023"],
  "Gain (mm)": ["50", ""],
  "Height pre-op (cm)": ["150", ""],
  "Complication 1": ["DVT", "none"],
});

const linesOf = async () => {
  const { rows, findings } = await load(text);
  return { rows, lines: [...encodeCommit({ rows, findings: countFindings(findings) })] };
};
const collected = (lines: readonly string[]) => {
  const collector = collectCommit();
  for (const line of lines) collector.take(line.trimEnd());
  return collector.finish();
};

test("rows come out of the wire as they went in", async () => {
  const { rows, lines } = await linesOf();
  expect(lines[0]).toBe('{"lengthbook":1,"counts":{"person":2,"bodyMeasure":1,"segment":2,"event":1},"findings":{}}\n');
  expect(lines.at(-1)).toBe('{"end":6}\n');
  expect(collected(lines).rows).toEqual(rows);
});

test("a sealed key travels in the head", async () => {
  const { rows } = await linesOf();
  const random = (length: number) => new Uint8Array(length).fill(3);
  const secrets = { passphrase: "fifteen letters and more", recoveryCode: makeRecoveryCode(random) };
  const unitKey = await sealUnitKey(unitKeyOf(new Uint8Array(32).fill(7)), { ...secrets, random, iterations: 2 });
  expect(collected([...encodeCommit({ rows, findings: {}, unitKey })]).unitKey).toEqual(unitKey);
});

test("corrections that the person let the sheet overrule travel in the head as a number", async () => {
  const { rows } = await linesOf();
  expect(collected([...encodeCommit({ rows, findings: {}, overCorrections: 3 })]).overCorrections).toBe(3);
  expect(collected([...encodeCommit({ rows, findings: {} })])).not.toHaveProperty("overCorrections");
});

const row = async () =>
  JSON.parse((await linesOf()).lines.find((line) => line.startsWith('{"table":"segment"')) ?? "{}") as {
    table: string;
    row: Record<string, unknown>;
  };
const faultOf = (line: unknown, lineNumber = 2) => {
  try {
    decodeLine(typeof line === "string" ? line : JSON.stringify(line), lineNumber);
  } catch (error) {
    if (error instanceof WireError) return { line: error.line, field: error.field, kind: error.kind, message: error.message };
    throw error;
  }
  return null;
};

test.each([
  ["a name as bone", { bone: "Quornaruth" }, "bone"],
  ["a date as day", { consolidationDay: "2023-08-14" }, "consolidationDay"],
  ["a date as number", { consolidationDay: 20230814.5 }, "consolidationDay"],
  ["a day of no line", { surgeryDay: 5_000_000 }, "surgeryDay"],
  ["a local number as person", { person: "A1" }, "person"],
  ["a gain beyond the limits", { gainMm: 900 }, "gainMm"],
  ["no bone", { bone: null }, "bone"],
  ["text as flag", { canalVented: "yes" }, "canalVented"],
  ["an object as number", { gainMm: { a: 1 } }, "gainMm"],
])("%s is refused by line and field, never by value", async (_, change, field) => {
  const { table: name, row: fields } = await row();
  const fault = faultOf({ table: name, row: { ...fields, ...change } }, 7);
  expect(fault).toMatchObject({ line: 7, field });
  for (const value of Object.values(change)) if (value !== null) expect(fault?.message).not.toContain(String(value));
});

test("only tables and fields of the codebook come in, and a strange field isn't named", async () => {
  const { row: fields } = await row();
  expect(faultOf({ table: "segment", row: { ...fields, surname: "Quornaruth" } })).toMatchObject({
    field: null,
    kind: "a field that the codebook hasn't",
  });
  expect(faultOf({ table: "segment", row: { ...fields, __proto__x: 1 } })).not.toBeNull();
  expect(faultOf('{"table":"segment","row":{"__proto__":{"a":1}}}')).not.toBeNull();
  expect(faultOf({ table: "patients", row: {} })).not.toBeNull();
  expect(faultOf({ table: "toString", row: {} })).not.toBeNull();
  expect(faultOf({ table: "segment", row: fields, file: "x" })).not.toBeNull();
  expect(faultOf("Quornaruth")?.message).not.toContain("Quornaruth");
  expect(faultOf("[]")).not.toBeNull();
  expect(faultOf(`{"end":${"1".repeat(30_000)}}`)).not.toBeNull();
});

test.each([
  ["another version", { lengthbook: 2, counts: {}, findings: {} }],
  ["a finding of no code", { lengthbook: 1, counts: {}, findings: { Quornaruth: 1 } }],
  ["a file's name", { lengthbook: 1, counts: {}, findings: {}, file: "Quornaruth.csv" }],
])("a head with %s is refused", (_, head) => {
  const fault = faultOf(head, 1);
  expect(fault).toMatchObject({ line: 1 });
  expect(fault?.message).not.toContain("Quornaruth");
});

test("a commit that broke off, goes on after its end, or counts wrongly is refused whole", async () => {
  const { lines } = await linesOf();
  expect(() => collected(lines.slice(0, -1))).toThrow(WireError);
  expect(() => collected([...lines, lines[1] as string])).toThrow(WireError);
  expect(() => collected([...lines.slice(0, 2), ...lines.slice(3)])).toThrow(WireError);
  expect(() => collected([...lines.slice(0, 2), ...lines.slice(3, -1), '{"end":5}'])).toThrow(WireError);
  expect(() => collected([])).toThrow(WireError);
});
