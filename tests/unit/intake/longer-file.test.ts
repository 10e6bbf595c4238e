import { describe, expect, test } from "vitest";
import type { Change, StrippedRows } from "@/lib/intake";
import { load, oneRow, saidOf, table } from "./load";

const log = (rows: readonly Readonly<Record<string, string>>[]) => {
  const headers = [...new Set(["MRN", "Bone", "Side", "Op date", ...rows.flatMap((row) => Object.keys(row))])];
  const given = { Bone: "Femur", Side: "L", "Op date": "14/02/2023" } as Readonly<Record<string, string>>;
  return table(Object.fromEntries(headers.map((header) => [header, rows.map((row) => row[header] ?? given[header] ?? "")])));
};
const shown = (changes: readonly Change[] = []) =>
  changes.map(({ table: of, field, from, to, days, row }) => [of, field, from, to, days, row]);

describe("a longer file", () => {
  const first = [
    { MRN: "A1", Sex: "F", "Gain (mm)": "50", "Date consolidated": "" },
    { MRN: "A2", Sex: "F", "Gain (mm)": "40", Vented: "yes" },
    { MRN: "A3", "Height pre-op (cm)": "150" },
  ];
  const longer = [
    { MRN: "A1", Sex: "F", "Gain (mm)": "52", "Date consolidated": "14/08/2023" },
    { MRN: "A2", Sex: "F", "Gain (mm)": "40", Vented: "" },
    { MRN: "A4" },
  ];

  test("lists what is new, what changed field by field, and what it doesn't name; a blank clears nothing", async () => {
    const held = (await load(log(first))).rows;
    const { news, counts } = await load(log(longer), { held });
    expect(shown(news?.changes)).toEqual([
      // 14 February to 14 August 2023: 28 − 14 + 31 + 30 + 31 + 30 + 31 + 14
      ["segment", "consolidationDay", null, 181, "from-surgery", 2],
      ["segment", "gainMm", 50, 52, null, 2],
    ]);
    expect(news?.fresh.segment).toEqual([{ file: "log.csv", row: 4 }]);
    expect(news?.fresh.person).toEqual([{ file: "log.csv", row: 4 }]);
    expect(news?.absent.segment).toEqual([held.segment[2]]);
    expect(news?.absent.person).toEqual([held.person[2]]);
    // the longer file says nothing of heights
    expect(news?.absent.bodyMeasure).toEqual([]);
    expect(counts.absent).toMatchObject({ bodyMeasure: 1, segment: 1 });
  });

  test("a file as held brings no news; without what is held there is none to tell", async () => {
    const { rows, news } = await load(log(first));
    expect(news).toBeNull();
    const again = await load(log(first), { held: rows });
    expect(again.news?.changes).toEqual([]);
    expect(Object.values(again.news?.fresh ?? {}).flat()).toEqual([]);
    expect(Object.values(again.news?.absent ?? {}).flat()).toEqual([]);
  });

  test("rows held that come without their blanks are compared alike", async () => {
    const { rows } = await load(log(first));
    const filled = (row: object) => Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null));
    const held = Object.fromEntries(Object.entries(rows).map(([name, all]) => [name, all.map(filled)])) as unknown as StrippedRows;
    expect((await load(log(first), { held })).news?.changes).toEqual([]);
  });

  test("a day of a person is told from the day held", async () => {
    const status = (day: string) => table({ MRN: "A1", Sex: "F", "Follow-up status": "discharged", "Date of status": day });
    const held = (await load([log(first), status("14/03/2024")])).rows;
    const { news } = await load(status("24/03/2024"), { held });
    expect(shown(news?.changes)).toEqual([["person", "followUpStatusDay", 0, 10, "from-held", 2]]);
  });
});

describe("near duplicates", () => {
  const two = (second: string, more: Readonly<Record<string, string>> = {}) =>
    log([
      { MRN: "A1", "Gain (mm)": "50" },
      { MRN: "A1", "Op date": second, "Gain (mm)": "50", ...more },
    ]);

  test.each([
    ["16/03/2023", ["near-duplicate 3 Op date"]],
    ["17/03/2023", []],
    ["15/01/2023", ["near-duplicate 3 Op date"]],
  ])("within a file: 14/02/2023 and %s", async (second, said) => {
    const { findings, questions } = await load(two(second));
    expect(saidOf(findings)).toEqual(said);
    expect(questions).toHaveLength(said.length);
    expect(questions[0]?.finding.mend ?? "row 2").toContain("row 2");
  });

  test("other bones and sides are no duplicates", async () => {
    expect(saidOf((await load(two("16/02/2023", { Side: "R" }))).findings)).toEqual([]);
    expect(saidOf((await load(two("16/02/2023", { Bone: "Tibia" }))).findings)).toEqual([]);
  });

  test("the same: the row above is said twice; new: both stand", async () => {
    const same = await load(two("16/02/2023"), { mapping: { answers: { "near-duplicate": "same" } } });
    expect(saidOf(same.findings)).toEqual(["duplicate-row 3"]);
    expect(same.rows.segment).toHaveLength(1);
    const fresh = await load(two("16/02/2023"), { mapping: { answers: { "near-duplicate": "new" } } });
    expect(fresh.rows.segment).toHaveLength(2);
  });

  test("of two files the later one takes the day of the first", async () => {
    const texts = [log([{ MRN: "A1", "Gain (mm)": "50" }]), log([{ MRN: "A1", "Op date": "16/02/2023", "Gain (mm)": "52" }])];
    const { rows } = await load(texts, { mapping: { answers: { "near-duplicate": "same" } } });
    expect(rows.segment.map(({ gainMm }) => gainMm)).toEqual([52]);
  });

  test("a row that says a held operation again asks nothing, whatever stands near", async () => {
    const held = (await load(two("16/02/2023"), { mapping: { answers: { "near-duplicate": "new" } } })).rows;
    expect((await load(two("16/02/2023"), { held })).questions).toEqual([]);
  });
});

describe("together with what is held", () => {
  test("a part that no sheet may say alone sets its row aside here, not the whole commit there", async () => {
    const held = (await load(oneRow({ "Distraction end": "20/02/2023" }))).rows;
    const { findings, rows } = await load(oneRow({ "Distraction start": "24/02/2023" }), { held });
    expect(saidOf(findings)).toEqual(["days-out-of-order 2"]);
    expect(rows.segment).toEqual([]);
  });

  test("an event of pins beside a nail: of the same file, of a file beside it, of what is held", async () => {
    const segment = oneRow({ Device: "Magnetic nail" });
    const event = table({ MRN: "A001", Bone: "Femur", Side: "L", Complication: "Pin infection" });
    const said = ["fixator-event-without-fixator 2 Complication"];
    expect(saidOf((await load([segment, event])).findings)).toEqual(said);
    expect(saidOf((await load(event, { held: (await load(segment)).rows })).findings)).toEqual(said);
    expect(saidOf((await load([oneRow({ Device: "Ring fixator" }), event])).findings)).toEqual([]);
  });
});

describe("corrected by hand, and two numbers of one patient", () => {
  const text = oneRow({ "Gain (mm)": "50" });

  test("what the sheet said before is no change; another value is one, and says what was corrected", async () => {
    const { rows } = await load(text);
    const [segment] = rows.segment;
    if (!segment) throw new Error("the row of this test must stand");
    const held = { ...rows, segment: [{ ...segment, gainMm: 45 }] } as StrippedRows;
    const { person, bone, side, surgeryDay } = segment;
    const correction = { table: "segment", key: { person, bone, side, surgeryDay }, field: "gainMm", sheet: 50, value: 45 } as const;
    expect((await load(text, { held, corrections: [correction] })).news?.changes).toEqual([]);
    const other = await load(oneRow({ "Gain (mm)": "55" }), { held, corrections: [correction] });
    expect(other.news?.changes).toMatchObject([{ field: "gainMm", from: 45, to: 55, corrected: { sheet: 50 } }]);
    expect((await load(text, { held })).news?.changes).toMatchObject([{ field: "gainMm", from: 45, to: 50, corrected: null }]);
  });

  test("rows of a joined number are found on the line of the first", async () => {
    const own = await load(oneRow({ "Hospital No": "B777", "Gain (mm)": "50" }));
    const other = await load(text);
    const [mine] = own.rows.segment;
    const [first] = other.rows.person;
    const moved = (row: NonNullable<typeof mine>, days: number) => ({ ...row, person: first?.person, surgeryDay: row.surgeryDay + days });
    if (!mine || !first) throw new Error("the rows of this test must stand");
    const held = { ...own.rows, person: [first], segment: [moved(mine, 1000)] } as unknown as StrippedRows;
    const joins = [{ person: mine.person, as: first.person, days: 1000 }];
    const again = await load(oneRow({ "Hospital No": "B777", "Gain (mm)": "51" }), { held, joins });
    expect(shown(again.news?.changes)).toEqual([["segment", "gainMm", 50, 51, null, 2]]);
    const near = await load(oneRow({ "Hospital No": "B777", "Date of surgery": "16/02/2023" }), { held, joins });
    expect(saidOf(near.findings)).toEqual(["near-duplicate 2 Date of surgery"]);
    const visit = table({ MRN: "B777", Bone: "Femur", Side: "L", "Visit date": "14/03/2023", Cortices: "1" });
    const { rows } = await load(visit, { held, joins });
    expect(rows.visit[0]).toMatchObject({ person: mine.person, surgeryDay: mine.surgeryDay });
  });
});
