import { expect, test } from "vitest";
import { count, figureCsv, span, tableFrom, words } from "@/lib/charts";

const columns = [
  { id: "group", head: "Group", align: "start" },
  { id: "mean", head: "Mean", unit: "mm", align: "end" },
  { id: "interval", under: "mean", head: "95 % CI", unit: "mm", align: "end" },
] as const;

test("numbers stand bare, spans in two columns, blanks where there is no value", () => {
  expect(
    figureCsv({
      columns,
      rows: [
        ["Femur", "−2.1", "−4.0 to 0.2"],
        ["Tibia", "–", "–"],
      ],
    }),
  ).toBe("Group,Mean (mm),Mean 95 % CI (mm) from,Mean 95 % CI (mm) to\r\nFemur,-2.1,-4.0,0.2\r\nTibia,,,\r\n");
});

test("thousands set apart in a table stand together in the file, and words keep their blanks", () => {
  const table = tableFrom(
    [
      words<number>("group", "Group", () => "over 10\u202f000"),
      count<number>("n", "n", (n) => n),
      span<number>("span", "Span", { name: "mm", perRecord: 1, digits: 1, valueDigits: 0 }, (n) => [-n, n]),
    ],
    [43129],
  );
  expect(table.rows[0]).toEqual(["over 10\u202f000", "43\u202f129", "−43\u202f129.0 to 43\u202f129.0"]);
  expect(figureCsv(table)).toBe("Group,n,Span (mm) from,Span (mm) to\r\nover 10\u202f000,43129,-43129.0,43129.0\r\n");
});

test("commas, quotes and line ends are quoted (RFC 4180, 2.5 to 2.7)", () => {
  expect(figureCsv({ columns: columns.slice(0, 1), rows: [['a, "b"'], ["c\nd"]] })).toBe('Group\r\n"a, ""b"""\r\n"c\nd"\r\n');
});

test.each(["=1+1", "+1 more", "-x", "@sum", "\tx"])("a label %j is not taken for a formula", (label) => {
  const [, line = ""] = figureCsv({ columns: columns.slice(0, 1), rows: [[label]] }).split("\r\n");
  expect(line.replace(/^"/, "").startsWith("'")).toBe(true);
});

test("a span that was not reached at one end is a blank there", () => {
  expect(figureCsv({ columns: [{ id: "q", head: "Quartiles", align: "end" }], rows: [["1.0 to –"], ["2.0 to 3.0"]] })).toBe(
    "Quartiles from,Quartiles to\r\n1.0,\r\n2.0,3.0\r\n",
  );
});
