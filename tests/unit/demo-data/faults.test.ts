import { expect, test } from "vitest";
import { findingSeverities } from "@/lib/codebook";
import { jsonOf, recordsOf } from "./read";

type Fault = { file: string; row: number; column: string | null; code: string; typed: string | null; mended: string | null; mend: string };
const key = jsonOf("raw-one-sheet.key.json") as readonly Fault[];
const raw = recordsOf("raw-one-sheet.csv", "latin1", ";");
const clean = recordsOf("raw-one-sheet.clean.csv", "latin1", ";");
const headers = raw[1] ?? [];

test("fifteen faults of fifteen kinds, each in a row of its own and with its mend", () => {
  expect(key).toHaveLength(15);
  expect(new Set(key.map(({ code }) => code)).size).toBe(15);
  expect(new Set(key.map(({ row }) => row)).size).toBe(15);
  expect(key.every(({ code, mend }) => code in findingSeverities && mend.length > 20)).toBe(true);
});

test("the raw sheet has its title above the header and about 130 segments of two years", () => {
  expect(raw[0]?.[0]).toMatch(/INVENTED/);
  expect(headers.slice(0, 5)).toEqual(["Hosp No", "NHS No", "Surname", "First name", "DOB"]);
  expect(raw.length - 2).toBeGreaterThan(120);
  expect(raw.length - 2).toBeLessThan(145);
});

test("raw sheet and clean twin differ in the cells of the key and nowhere else", () => {
  const differing = clean.flatMap((row, index) =>
    row.flatMap((cell, at) =>
      cell === raw[index]?.[at] ? [] : [{ row: index + 1, column: headers[at], typed: raw[index]?.[at], mended: cell }],
    ),
  );
  const inCells = key.filter(({ column }) => column !== null).map(({ row, column, typed, mended }) => ({ row, column, typed, mended }));
  expect(differing).toEqual(inCells.sort((a, b) => a.row - b.row));
});

test("the row that stands twice is the one row more of the raw sheet", () => {
  const doubled = key.find(({ code }) => code === "duplicate-row");
  expect(raw).toHaveLength(clean.length + 1);
  expect(doubled?.row).toBe(raw.length);
  expect(clean).toContainEqual(raw.at(-1));
});

test("some complications stand in the comments alone", () => {
  const [type, comment] = [headers.indexOf("Complication 1"), headers.indexOf("Comments")];
  const told = clean
    .slice(2)
    .filter(
      (row) => row[type] === "" && /infection|equinus|stiffness|contracture|drop foot|screw|deviation|palsy/.test(row[comment] ?? ""),
    );
  expect(told.length).toBeGreaterThan(5);
});
