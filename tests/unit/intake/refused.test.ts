import fc from "fast-check";
import { expect, test } from "vitest";
import { refusedCsv, refusedFiles } from "@/lib/intake";
import { load, sheetOf, table } from "./load";

const cell = fc.string({ unit: fc.constantFrom(..."abXZ09 ,;\t\"'\n=+-@|é–"), maxLength: 10 }).map((text) => text.trim());

test("rows set aside are read again as they were, whatever stands in them", async () => {
  const row = fc.tuple(cell, cell, cell);
  let refusedRows = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 6 }), async (rows) => {
      // a side that is none sets each row aside
      const filled = rows.map(([ward, note, gain], i) => [`A${i}`, "Femur", "9", "14/02/2023", ward, note, gain]);
      const column = (at: number) => filled.map((each) => each[at] ?? "");
      const text = table({
        MRN: column(0),
        Bone: column(1),
        Side: column(2),
        "Op date": column(3),
        Ward: column(4),
        Note: column(5),
        "Gain (mm)": column(6),
      });
      const prepared = await load(text);
      fc.pre(prepared.stage === "rows");
      expect(prepared.refused).toHaveLength(filled.length);
      const back = sheetOf(refusedCsv(prepared), "refused.csv");
      expect(back.headers.slice(0, 7)).toEqual(prepared.sheets[0]?.headers);
      expect(back.rows.map((cells) => cells.slice(0, 7))).toEqual(prepared.sheets[0]?.rows);
      expect(back.ragged).toEqual([]);
      refusedRows += filled.length;
    }),
    { numRuns: 100 },
  );
  expect(refusedRows).toBeGreaterThan(100);
});

test("of several sheets each has a file of its own, which is read as that sheet", async () => {
  const segments = table({ MRN: ["A1", "A2"], Bone: ["Femur", "Femur"], Side: ["L", ""], "Op date": ["14/02/2023", "14/02/2023"] });
  const visits = table({ MRN: "A1", Bone: "Femur", Side: "L", "Visit date": "soon", Cortices: "2" });
  const whole = table({ MRN: "A1", Sex: "F" });
  const files = refusedFiles(await load([segments, visits, whole]));
  expect(files.map(({ file, rows }) => [file, rows])).toEqual([
    ["log.csv", 1],
    ["log-2.csv", 1],
  ]);
  const [segment, visit] = files.map(({ csv }) => csv);
  const mended = [(segment ?? "").replace("A2,Femur,,", "A2,Femur,R,"), (visit ?? "").replace("soon", "14/03/2023")];
  const { rows, refused } = await load([segments, ...mended]);
  expect(refused.map(({ file }) => file)).toEqual(["log.csv"]);
  expect(rows.segment).toHaveLength(2);
  expect(rows.visit).toHaveLength(1);
});

test("a row with too many cells comes back with all of them", async () => {
  const prepared = await load(
    `${table({ MRN: "A1", Bone: "Femur", Side: "L", "Op date": "14/02/2023" })}\nA2,Femur,L,14/02/2023,extra\nA3,Femur`,
  );
  const [first, second] = sheetOf(refusedCsv(prepared))
    .ragged.concat([])
    .map(({ cells }) => cells);
  expect(first?.slice(0, 5)).toEqual(["A2", "Femur", "L", "14/02/2023", "extra"]);
  expect(second).toBeUndefined();
});
