import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { keyRing, type Prepared, parseMapping, prepare, readSheet, templateCsv, unitKeyOf } from "@/lib/intake";
import { makeHunt } from "../../integration/identifier-hunt";

const ring = keyRing(unitKeyOf(new Uint8Array(32)));
// no word of ours and no pseudonym (they have no U) holds these letters together, so that any part of a cell is known wherever it turns up
const marker = "zuq";

const letters = fc
  .string({ unit: fc.constantFrom(..."bcdfghjklmnpqrstvwx"), minLength: 3, maxLength: 9 })
  .map((text) => `${marker}${text}`);
const word = fc.oneof(
  letters,
  letters.map((text) => text.toUpperCase()),
  letters.map((text) => `Zuq${text.slice(3)}`),
);
const secret = fc.oneof(
  word,
  fc.tuple(word, word).map(([a, b]) => `${a}, ${b}`),
  word.map((text) => `Mr ${text}`),
  word.map((text) => `name is ${text}`),
  word.map((text) => `943 476 5870 ${text}`),
  word.map((text) => `12.5 ${text}`),
  word.map((text) => `${text}@example.org`),
  word.map((text) => `09/03/1999 ${text}`),
  word.map((text) => `femur ${text}`),
  word.map((text) => `magnetic nail, ${text}`),
  word.map((text) => `the frame of ${text} was taken off by the nurse in clinic`),
  word.map((text) => `=1+${text}`),
);
const words = ["", "", "femur", "left", "right", "yes", "14/05/2021", "20/11/2021", "magnetic-nail", "fully", "none"];
const numbers = ["12.5", "65", "2"];
const cell = fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...words, ...numbers) }, { weight: 1, arbitrary: secret });

const templates = ["one-sheet", "persons", "body-measures", "segments", "visits", "events", "scores"] as const;
function unitSaid(column: string): readonly (readonly [string, "days" | "mm"])[] {
  if (/_(?:day|date)$/.test(column)) return [[column, "days"]];
  return /height|_mm$/.test(column) ? [[column, "mm"]] : [];
}
const mapping = parseMapping({
  columns: {},
  // what would be asked about before a row is read is said
  units: Object.fromEntries(templates.flatMap((template) => templateCsv(template).trim().split(",").flatMap(unitSaid))),
  dates: "dmy",
  decimal: ".",
  values: {},
  answers: { "blank-consolidation": "not-recorded" },
});

async function bring(template: Parameters<typeof templateCsv>[0], rows: readonly (readonly string[])[]): Promise<Prepared> {
  const header = templateCsv(template).trim();
  const quoted = rows.map((row) => row.map((text) => `"${text.replaceAll('"', '""')}"`).join(","));
  const { sheet } = readSheet(new TextEncoder().encode([header, ...quoted].join("\r\n")), { file: "rows.csv" });
  if (!sheet) throw new Error("the sheet of this test must be readable");
  return prepare({ sheets: [sheet], mapping, ring, today: { year: 2026, month: 1, day: 31 }, units: ["unit-1"], scores: ["score-a"] });
}

/** All that intake says in words: findings, questions, reasons of refusal, and the mapping that would be saved. */
function said({ findings, questions, refused, groups, mapping: saved }: Prepared): string {
  return JSON.stringify([findings, groups, questions.map(({ finding, choices }) => [finding, choices]), refused, saved]);
}

describe("nothing that intake says or sends holds a part of a cell's text", () => {
  test.each(templates)("%s", async (template) => {
    const [, ...others] = templateCsv(template).trim().split(",");
    let rowsRead = 0;
    let refused = 0;
    const row = fc.tuple(fc.oneof(letters, fc.constant("A7731884920")), fc.tuple(...others.map(() => cell)));
    await fc.assert(
      fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 5 }), async (rows) => {
        const prepared = await bring(
          template,
          rows.map(([localId, cells]) => [localId, ...cells]),
        );
        rowsRead += prepared.counts.rowsRead;
        refused += prepared.refused.length;
        for (const text of [said(prepared), JSON.stringify(prepared.rows)]) {
          expect(text.toLowerCase()).not.toContain(marker);
          expect(text).not.toContain("7731884920");
          expect(text).not.toContain("943 476 5870");
        }
      }),
      { numRuns: 60 },
    );
    // the property says nothing of files that are not read, or in which nothing is wrong
    expect(rowsRead).toBeGreaterThan(60);
    expect(refused).toBeGreaterThan(0);
  });

  const base: Readonly<Record<string, string>> = {
    bone: "femur",
    side: "left",
    surgery_day: "14/05/2021",
    body_day: "14/05/2021",
    visit_day: "20/06/2021",
    event_type: "stiffness",
    score_code: "score-a",
    score_day: "14/05/2021",
    score_value: "12",
  };
  const secrets = [
    "zuqsmith",
    "Zuqsmith",
    "Zuqsmith, Yod",
    "Mr Zuqsmith",
    "zuqsmith-jones",
    "943 476 5870 zuqsmith",
    "zuqsmith@example.org",
    "9434765870",
    "07700900461",
    "19910123",
    // a birth date as a spreadsheet counts days, and numbers of the file's own column of numbers
    "33261",
    "A7731884920",
    "7731884921",
  ];
  const columns = templates.flatMap((template) =>
    templateCsv(template)
      .trim()
      .split(",")
      .filter((column) => column !== "local_id")
      .map((column) => [template, column] as const),
  );
  // where nothing else is wrong with the row, so that only the cell's own column keeps it from being sent
  test.each(columns)("%s, one cell of %s", async (template, column) => {
    const header = templateCsv(template).trim().split(",");
    // an order of operations may be a number of five digits: there it is that number
    const given = secrets.filter((text) => column !== "case_order" || text.length > 5);
    const rows = given.map((text, n) =>
      header.map((name) => (name === column ? text : name === "local_id" ? `A773188492${n}` : (base[name] ?? ""))),
    );
    const prepared = await bring(template, rows);
    for (const text of [said(prepared), JSON.stringify(prepared.rows)]) {
      expect(text.toLowerCase()).not.toContain(marker);
      expect(text).not.toMatch(/943 ?476 ?5870|773188492|7700900461|19910123|33261/);
    }
  });

  test("the same check sees a quoted cell", async () => {
    const prepared = await bring("scores", [["A7731884920", "", "score-a", "14/05/2021", "zuqtest"]]);
    expect(said(prepared)).toContain("not-a-number");
    expect(JSON.stringify(prepared.sheets)).toContain(marker);
  });
});

describe("what would be sent holds no planted identifier in any writing", () => {
  test("a segment with a name, a number and dates", async () => {
    const header = templateCsv("one-sheet").trim().split(",");
    const filled: Readonly<Record<string, string>> = {
      local_id: "A7731884920",
      date_of_birth: "09/03/1999",
      surgeon_name: "Zuqexample, Yod",
      bone: "femur",
      side: "left",
      surgery_day: "14/05/2021",
      consolidation_day: "20/11/2021",
      gain_mm: "50",
    };
    const planted = {
      names: ["Zuqexample", "Zuqexample, Yod"],
      numbers: ["A7731884920", "7731884920"],
      dates: [
        { year: 1999, month: 3, day: 9 },
        { year: 2021, month: 5, day: 14 },
        { year: 2021, month: 11, day: 20 },
      ],
    };
    const { rows, ...rest } = await bring("one-sheet", [header.map((name) => filled[name] ?? "")]);
    expect(rows.segment).toHaveLength(1);
    const hunt = makeHunt(planted);
    expect(hunt.inText("rows", JSON.stringify(rows))).toEqual([]);
    expect(hunt.inText("findings", JSON.stringify(rest.findings))).toEqual([]);
    // it would be found: the sheet in the tab still holds it
    expect(new Set(hunt.inText("sheet", JSON.stringify(rest.sheets)).map(({ of }) => of)).size).toBe(7);
  });
});
