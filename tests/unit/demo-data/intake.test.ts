import { expect, test } from "vitest";
import { emptyMapping, keyRing, type Mapping, makeUnitKey, parseMapping, prepare, readFile, type Sheet } from "@/lib/intake";
import { bytesOf, type Fault, jsonOf } from "./read";

const scores = (jsonOf("settings.json") as { scores: { code: string }[] }).scores.map(({ code }) => code);
const ring = keyRing(makeUnitKey((length) => new Uint8Array(length).fill(7)));
const answered = parseMapping(jsonOf("raw-one-sheet.mapping.json"));

async function read(file: string): Promise<readonly Sheet[]> {
  const { sheets } = await readFile(new Uint8Array(bytesOf(file)), { file });
  if (sheets.length === 0) throw new RangeError(`read requires a file that is a table, received ${file}`);
  return sheets;
}

const prepared = async (files: readonly string[], mapping: Mapping = emptyMapping) =>
  prepare({
    sheets: (await Promise.all(files.map(read))).flat(),
    mapping,
    ring,
    unit: "unit-1",
    today: { year: 2025, month: 4, day: 7 },
    auditYearStartsIn: 1,
    scores,
  });

const keyed = jsonOf("raw.key.json") as readonly Fault[];
// each file once, not once a fault
const findingsOf = new Map<string, ReturnType<typeof prepared>>();
const mappingOf = (file: string) => (file.startsWith("raw-one-sheet") ? answered : emptyMapping);

test.each(keyed)("$file row $row: $code is named", async ({ file, row, column, code }) => {
  const made = findingsOf.get(file) ?? prepared([file], mappingOf(file));
  findingsOf.set(file, made);
  const { findings } = await made;
  // a header stands in no row
  const line = code === "identifier-in-header" ? null : row;
  expect(findings.map((finding) => `${finding.code} ${finding.row} ${finding.column}`)).toContain(`${code} ${line} ${column}`);
});

const twins = [...new Set(keyed.map(({ file }) => file.replace(/\.(?=csv$|xlsx$)/, ".clean.")))].map((file) => [file]);
test.each([
  ...twins,
  ["year-2023.csv"],
  ["year-2024.csv"],
  ["tables/visits.csv"],
  ["tables/events.csv"],
  ["tables/scores.csv"],
  ["tables/body-measures.csv"],
  ["tables/persons.csv"],
])("%s gives no finding above note, sets no row aside and asks nothing", async (file) => {
  const { findings, refused, questions } = await prepared([file], mappingOf(file));
  expect(findings.filter(({ severity }) => severity !== "note")).toEqual([]);
  expect(refused).toEqual([]);
  expect(questions).toEqual([]);
});

test.each(["seven-years.csv", "tables/segments.csv"])(
  "%s gives a finding above note for its four gains below 10 mm alone",
  async (file) => {
    const { findings, refused, dropped } = await prepared([file]);
    expect(findings.filter(({ severity }) => severity !== "note").map(({ code, field }) => `${code} ${field}`)).toEqual(
      Array.from({ length: 4 }, () => "out-of-usual-range gainMm"),
    );
    expect(refused).toEqual([]);
    expect(dropped).toEqual([]);
  },
);

test("forty faults stand in the key, all different", () => {
  expect(new Set(keyed.map(({ file, row, column, code }) => [file, row, column, code].join(" "))).size).toBe(40);
});
