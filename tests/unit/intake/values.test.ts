import { expect, test } from "vitest";
import type { DateOrder } from "@/lib/intake";
import { readDate } from "@/lib/intake/values/date";
import { noEvidence, orderOf, weigh } from "@/lib/intake/values/date-order";
import { markFrom, noMarkEvidence, weighMark } from "@/lib/intake/values/decimal-mark";
import { describe as described } from "@/lib/intake/values/describe";
import { excelSerial } from "@/lib/intake/values/excel-serial";
import { isLostNumber, isLostToDate, readNumber } from "@/lib/intake/values/number";

const iso = (date: { year: number; month: number; day: number } | null) =>
  date && `${date.year}-${String(date.month).padStart(2, "0")}-${String(date.day).padStart(2, "0")}`;
const dateOf = (cell: string, order: DateOrder | null = null, thisYear = 2026) => iso(readDate(cell, { order, thisYear }).date);

test.each<[string, DateOrder | null, string]>([
  ["2024-03-09", null, "2024-03-09"],
  ["2024/3/9", null, "2024-03-09"],
  ["2024-03-09T14:30:00", null, "2024-03-09"],
  ["2024-03-09 00:00", null, "2024-03-09"],
  ["20240309", null, "2024-03-09"],
  ["9 March 2024", null, "2024-03-09"],
  ["9-Mar-24", null, "2024-03-09"],
  ["9th Mar. 2024", null, "2024-03-09"],
  ["March 9, 2024", null, "2024-03-09"],
  ["Sat 9 March 2024", null, "2024-03-09"],
  ["09/03/2024", "dmy", "2024-03-09"],
  ["03/09/2024", "mdy", "2024-03-09"],
  ["09.03.2024", "dmy", "2024-03-09"],
  ["9.3.24", "dmy", "2024-03-09"],
  ["09-03-2024", "dmy", "2024-03-09"],
  ["24/03/09", "ymd", "2024-03-09"],
  ["25/04/45", "dmy", "1945-04-25"],
  ["09/03/2024 14:30", "dmy", "2024-03-09"],
  ["29/02/2024", "dmy", "2024-02-29"],
])("the date %s read as %s is %s", (cell, order, expected) => {
  expect(dateOf(cell, order)).toBe(expected);
});

test.each(["31/02/2023", "29/02/2023", "2023-13-01", "00/01/2024", "31/04/2024", "1 Feb 0000"])(
  "%s is a date that no calendar has",
  (cell) => {
    expect(readDate(cell, { order: "dmy", thisYear: 2026 }).why).toBe("date-impossible");
  },
);

test.each(["see film", "3/12", "12/2023", "1/52", "March", "2024", "n/a", "?"])("%s is no date", (cell) => {
  expect(readDate(cell, { order: "dmy", thisYear: 2026 })).toMatchObject({ date: null, why: "not-a-date" });
});

// first and last three as published for the two date systems of spreadsheets; 60 is the 29 February 1900 that never was
test.each([
  [1, "1900-01-01"],
  [59, "1900-02-28"],
  [60, null],
  [61, "1900-03-01"],
  [36161, "1999-01-01"],
  [40179, "2010-01-01"],
  [45731, "2025-03-15"],
])("serial %i is %s", (serial, expected) => {
  expect(iso(excelSerial(serial))).toBe(expected);
});

test("the same day is 1462 less in the 1904 system", () => {
  expect(iso(excelSerial(44269, { system: 1904 }))).toBe("2025-03-15");
});

const orderOfAll = (cells: readonly string[]) => {
  const evidence = noEvidence();
  for (const cell of cells) weigh(cell, evidence);
  return orderOf(evidence);
};
test.each([
  [["03/04/2024"], "unknown"],
  [["03/04/2024", "25/04/2024"], "dmy"],
  [["03/04/2024", "04/25/2024"], "mdy"],
  [["03/25/2024", "25/03/2024"], "unknown"],
  [["2024-03-04", "9 March 2024"], "none-needed"],
  [["05/05/2024"], "none-needed"],
  [[...Array(20).fill("25/04/2024"), "04/25/2024"], "dmy"],
])("order of %j is %s", (cells, expected) => {
  expect(orderOfAll(cells)).toBe(expected);
});

const markOfAll = (cells: readonly string[], possible: (value: number) => boolean = () => true) => {
  const evidence = noMarkEvidence();
  for (const cell of cells) weighMark(cell, evidence, possible);
  return markFrom(evidence);
};
test.each([
  [["4,5", "52"], ","],
  [["4.5"], "."],
  [["1,234"], "unknown"],
  [["1.234"], "unknown"],
  [["1.234", "4,5"], ","],
  [["1.234,5"], ","],
  [["1,234.5"], "."],
  [["1.234.567"], ","],
  [["0.125"], "."],
  [["52", "48"], "none-needed"],
])("decimal mark of %j is %s", (cells, expected) => {
  expect(markOfAll(cells)).toBe(expected);
});

test("a number that only fits its field with a decimal mark tells it", () => {
  expect(markOfAll(["1.234"], (value) => value < 250)).toBe(".");
  expect(markOfAll(["1,650"], (value) => value > 700)).toBe(".");
});

test.each<[string, "," | ".", number, string | null]>([
  ["4,5", ",", 4.5, null],
  ["4.5", ".", 4.5, null],
  ["1.234,5", ",", 1234.5, null],
  ["1 234,5", ",", 1234.5, null],
  ["1,234.5", ".", 1234.5, null],
  ["45 mm", ".", 45, "mm"],
  ["4.5cm", ".", 4.5, "cm"],
  ["35°", ".", 35, "deg"],
  ["1 mm/day", ".", 1, "mm/day"],
  ["12 months", ".", 12, "months"],
  ["-12", ".", -12, null],
  ["\u221212", ".", -12, null],
  [".5", ".", 0.5, null],
])("the number %s with mark %s", (cell, mark, value, unit) => {
  expect(readNumber(cell, mark)).toMatchObject({ value, unit });
});

test.each(["see film", "4,5", "12a", "1.2.3", "4-5", "<5", "~5", "", "five", "5'4\""])("%s is no number with a decimal point", (cell) => {
  expect(readNumber(cell, ".")).toBeNull();
});

test("numbers and words that a spreadsheet changed are known", () => {
  expect(["9.43477E+09", "9,43E+09", "1e5", "####", "#REF!", "#N/A"].map(isLostNumber)).toEqual(Array(6).fill(true));
  expect(["943", "E12", "4.5"].map(isLostNumber)).toEqual(Array(3).fill(false));
  expect(["04-Mar", "3-Apr", "Mar-04"].map(isLostToDate)).toEqual([true, true, true]);
  expect(["3 cortices", "March"].map(isLostToDate)).toEqual([false, false]);
});

test("what a cell holds is described by kind and length", () => {
  expect(["Quornaruth", "09/03/1999", "943 476 5870", "", "see film", "A1-77"].map(described)).toEqual([
    "text, 10 letters",
    "a date",
    "a number",
    "a blank cell",
    "text, 2 words, 8 characters",
    "text, 5 characters",
  ]);
});
