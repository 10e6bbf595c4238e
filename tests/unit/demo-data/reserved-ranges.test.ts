import { describe, expect, test } from "vitest";
import { demoFiles } from "../../../demo-data/files";
import { bytesOf, jsonOf, recordsOf } from "./read";

const names = demoFiles().map(({ name }) => name);
const textOf = (name: string) => bytesOf(name).toString("latin1");

describe.each(names)("%s", (name) => {
  test("holds no number of ten digits but those kept for tests", () => {
    const numbers = [...textOf(name).matchAll(/(?<![\d.])\d{3}[ -]?\d{3}[ -]?\d{4}(?![\d.])/g)].map(([number]) => number);
    expect(numbers.filter((number) => !number.startsWith("999"))).toEqual([]);
  });

  test("holds no telephone number outside the range kept for drama", () => {
    const phones = [...textOf(name).matchAll(/(?<!\d)(?:\+\d|0[127]\d{2})[\d ]{7,}/g)].map(([phone]) => phone.replaceAll(" ", ""));
    expect(phones.filter((phone) => !phone.startsWith("07700900") && !phone.startsWith("0999"))).toEqual([]);
  });

  test("holds no address but at example.org", () => {
    expect(
      [...textOf(name).matchAll(/[\w.+-]+@[\w.-]+/g)].map(([address]) => address).filter((address) => !address.endsWith("@example.org")),
    ).toEqual([]);
  });
});

// modulus 11 with weights 10 to 2, as the national data dictionary has it
test("NHS numbers of the raw sheet begin 999 and have a right check digit", () => {
  const rows = recordsOf("raw-one-sheet.clean.csv", "latin1", ";").slice(2);
  for (const [, number = ""] of rows) {
    const digits = [...number.replaceAll(" ", "")].map(Number);
    const sum = digits.slice(0, 9).reduce((total, digit, index) => total + digit * (10 - index), 0);
    expect(number.startsWith("999 ")).toBe(true);
    expect((11 - (sum % 11)) % 11).toBe(digits[9]);
  }
});

test("the list of planted identifiers holds every name, number and date of the raw sheet", () => {
  const { identifiers } = jsonOf("planted-identifiers.json") as { identifiers: { kind: string; as: string[] }[] };
  const planted = new Set(identifiers.flatMap(({ as }) => as));
  const rows = recordsOf("raw-one-sheet.clean.csv", "utf8", ";").slice(2);
  const headers = recordsOf("raw-one-sheet.clean.csv", "utf8", ";")[1] ?? [];
  const cells = ["Hosp No", "NHS No", "DOB", "Tel", "Email", "Serial No", "Date of op"].flatMap((header) =>
    rows.map((row) => row[headers.indexOf(header)] ?? ""),
  );
  expect(cells.filter((cell) => !planted.has(cell))).toEqual([]);
});
