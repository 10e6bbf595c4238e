import { describe, expect, test } from "vitest";
import { findingSeverities } from "@/lib/codebook";
import { type Fault, headerLineOf, jsonOf, recordsOf, sheetOf } from "./read";

const key = jsonOf("raw.key.json") as readonly Fault[];
const files = [...new Set(key.map(({ file }) => file))];

test("forty faults in all, fifteen of them in the one-sheet file, of twenty-five kinds and more, each with its mend", () => {
  expect(key).toHaveLength(40);
  expect(key.filter(({ file }) => file === "raw-one-sheet.csv")).toEqual(jsonOf("raw-one-sheet.key.json"));
  expect(key.filter(({ file }) => file === "raw-one-sheet.csv")).toHaveLength(15);
  expect(new Set(key.map(({ code }) => code)).size).toBeGreaterThanOrEqual(25);
  expect(key.every(({ code, mend }) => code in findingSeverities && mend.length > 12)).toBe(true);
});

test("no two faults of a file stand in one row", () => {
  for (const file of files) {
    const rows = key.filter((fault) => fault.file === file).map(({ row }) => row);
    expect(new Set(rows).size).toBe(rows.length);
  }
});

describe.each(files)("%s", (file) => {
  test("differs from its clean twin where the key says and nowhere else", async () => {
    const [raw, clean] = [await sheetOf(file), await sheetOf(file.replace(/\.(csv|xlsx)$/, ".clean.$1"))];
    const headers = clean[headerLineOf(file) - 1] ?? [];
    const width = headers.length;
    const differing = raw.flatMap((row, index) =>
      Array.from({ length: width }, (_, at) => at)
        .filter((at) => index < clean.length && (row[at] ?? "") !== (clean[index]?.[at] ?? ""))
        .map((at) => `${index + 1} ${index + 1 === headerLineOf(file) ? row[at] : headers[at]}`),
    );
    const own = key.filter((fault) => fault.file === file && fault.row <= clean.length);
    expect(differing.sort()).toEqual(own.map(({ row, column }) => `${row} ${column}`).sort());
    const more = key.filter((fault) => fault.file === file && fault.row > clean.length);
    expect(raw).toHaveLength(clean.length + more.length);
  });
});

test("the row that stands twice in the one-sheet file is one of its rows", () => {
  const raw = recordsOf("raw-one-sheet.csv", "latin1", ";");
  const clean = recordsOf("raw-one-sheet.clean.csv", "latin1", ";");
  expect(key.find(({ code }) => code === "duplicate-row")?.row).toBe(raw.length);
  expect(clean).toContainEqual(raw.at(-1));
});

test("the one-sheet file has its title above the header and about 130 segments of two years", () => {
  const raw = recordsOf("raw-one-sheet.csv", "latin1", ";");
  expect(raw[0]?.[0]).toMatch(/INVENTED/);
  expect(raw[1]?.slice(0, 5)).toEqual(["Hosp No", "NHS No", "Surname", "First name", "DOB"]);
  expect(raw.length - 2).toBeGreaterThan(120);
  expect(raw.length - 2).toBeLessThan(145);
});

test("some complications stand in the comments alone", () => {
  const clean = recordsOf("raw-one-sheet.clean.csv", "latin1", ";");
  const [type, comment] = ["Complication 1", "Comments"].map((header) => clean[1]?.indexOf(header) ?? -1) as [number, number];
  const words = /infection|equinus|stiffness|contracture|drop foot|screw|deviation|palsy/;
  expect(clean.slice(2).filter((row) => row[type] === "" && words.test(row[comment] ?? "")).length).toBeGreaterThan(5);
});
