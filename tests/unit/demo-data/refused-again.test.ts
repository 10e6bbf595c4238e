import { expect, test } from "vitest";
import { emptyMapping, keyRing, type Mapping, makeUnitKey, parseMapping, prepare, readFile, refusedFiles, type Sheet } from "@/lib/intake";
import { bytesOf, type Fault, jsonOf } from "./read";

const scores = (jsonOf("settings.json") as { scores: { code: string }[] }).scores.map(({ code }) => code);
const ring = keyRing(makeUnitKey((length) => new Uint8Array(length).fill(7)));
const faults = jsonOf("raw.key.json") as readonly (Fault & { readonly mended: string | null })[];
const answered = parseMapping(jsonOf("raw-one-sheet.mapping.json"));

const sheetsOf = async (bytes: Uint8Array, file: string): Promise<readonly Sheet[]> => (await readFile(bytes, { file })).sheets;
const prepared = (sheets: readonly Sheet[], mapping: Mapping) =>
  prepare({ sheets, mapping, ring, today: { year: 2025, month: 4, day: 7 }, scores });

test.each(["raw-one-sheet.csv", "raw-visits.csv", "raw-events.csv", "raw-scores.csv", "raw-body-measures.csv", "raw-workbook.xlsx"])(
  "%s: its rows set aside, mended by the key and brought again, go in",
  async (file) => {
    const mapping = file === "raw-one-sheet.csv" ? answered : emptyMapping;
    const first = await prepared(await sheetsOf(new Uint8Array(bytesOf(file)), file), mapping);
    expect(first.refused.length).toBeGreaterThan(0);
    const [written] = refusedFiles(first);
    const [sheet] = await sheetsOf(new TextEncoder().encode(written?.csv), "refused.csv");
    if (!sheet) throw new RangeError("the rows set aside must be a table");
    const rows = sheet.rows.flatMap((cells, i) => {
      const row = first.refused[i]?.row;
      const own = faults.filter((fault) => fault.file === file && fault.row === row);
      // a row that stands twice is mended by leaving it out
      if (own.some(({ code }) => code === "duplicate-row")) return [];
      return [cells.map((cell, at) => own.find(({ column }) => column === sheet.headers[at])?.mended ?? cell)];
    });
    const again = await prepared([{ ...sheet, rows, rowNumbers: sheet.rowNumbers.slice(0, rows.length) }], mapping);
    expect(again.refused).toEqual([]);
    expect(again.counts.rowsRead).toBe(rows.length);
  },
);
