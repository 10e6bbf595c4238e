import { expect, test } from "vitest";
import { figureCsv } from "@/lib/charts";

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
