import { expect, test } from "vitest";
import { zipOf } from "../../../demo-data/sheets/zip";
import { rowsOf, sheetOf } from "./read";

// the check value of CRC-32 as catalogues of checksums print it: "123456789" gives cbf43926
test("entries of the archive carry the published checksum", () => {
  const bytes = Buffer.from(zipOf([{ name: "a", text: "123456789" }]));
  expect(bytes.readUInt32LE(14).toString(16)).toBe("cbf43926");
});

test("a reader that isn't ours finds title, headers, numbers and the days of the 1904 system", async () => {
  const rows = await sheetOf("raw-workbook.clean.xlsx");
  const headers = rows[1] ?? [];
  expect(rows[0]?.[0]).toMatch(/INVENTED/);
  const column = (header: string) => rows.slice(2).map((row) => row[headers.indexOf(header)] ?? "");
  const registry = rowsOf("seven-years.csv").filter((row) => row.surgery_day?.startsWith("2022"));
  expect(column("Hosp No").sort()).toEqual(registry.map((row) => row.local_id).sort());
  expect(column("Op date").sort()).toEqual(registry.map((row) => row.surgery_day).sort());
  expect(column("Gain (mm)").sort()).toEqual(registry.map((row) => row.gain_mm).sort());
});
