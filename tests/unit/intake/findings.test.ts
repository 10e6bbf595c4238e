import { expect, test } from "vitest";
import { type FindingCode, fileRefusals, findingSeverities } from "@/lib/codebook";
import { checkRows, readSheet } from "@/lib/intake";
import { utf8 } from "./bytes";
import { load, oneRow, saidOf, table } from "./load";

type Case = readonly [said: string, text: string];

const person = (id: string, more: Readonly<Record<string, string>>) => ({
  "Hospital No": id,
  Bone: "Femur",
  Side: "L",
  "Date of surgery": "14/02/2023",
  ...more,
});
const rows = (...all: readonly Readonly<Record<string, string>>[]) => {
  const headers = [...new Set(all.flatMap((row) => Object.keys(row)))];
  return table(Object.fromEntries(headers.map((header) => [header, all.map((row) => row[header] ?? "")])));
};
const course = { "Start of distraction": "21/02/2023", "Last distraction": "12/04/2023", "Gain (mm)": "50" };

const cases: readonly Case[] = [
  // columns
  ["no-local-id", table({ Bone: "Femur", Side: "L", "Date of surgery": "14/02/2023" })],
  ["two-columns-one-field Gain (mm)", oneRow({ "Gain (mm)": "50", "Achieved gain (mm)": "51" })],
  ["date-order-unknown Date of surgery", oneRow({ "Date of surgery": "03/04/2023" })],
  ["decimal-mark-unknown Theatre no", oneRow({ "Theatre no": "1,234" })],
  ["unit-unknown Gain", oneRow({ Gain: "5.1" })],
  ["unit-unknown Consolidation", oneRow({ Consolidation: "210" })],
  ["value-unknown 2 Device", oneRow({ Device: "Nail" })],
  ["value-unknown 2 Device", oneRow({ Device: "Quxnail" })],
  ["blank-consolidation Date consolidated", oneRow({ "Date consolidated": "", "Last seen": "14/02/2024" })],
  // cells
  ["not-a-number 2 Gain (mm)", oneRow({ "Gain (mm)": "see film" })],
  ["not-a-date 2 Last seen", oneRow({ "Last seen": "soon" })],
  ["not-a-code 2 Sex", oneRow({ Sex: "4" })],
  ["not-a-code 2 Diabetes", oneRow({ Diabetes: "maybe" })],
  ["out-of-hard-range 2 Gain (mm)", oneRow({ "Gain (mm)": "510" })],
  ["date-impossible 2 Last seen", oneRow({ "Last seen": "31/04/2024" })],
  ["date-impossible 2 DOB", oneRow({ DOB: "15/02/2023" })],
  ["date-in-future 2 Last seen", oneRow({ "Last seen": "26/11/2026" })],
  ["required-missing 2 Side", oneRow({ Side: "" })],
  ["required-missing 2 Date of surgery", oneRow({ "Date of surgery": "" })],
  ["required-missing 2 Hospital No", oneRow({ "Hospital No": "" })],
  ["number-lost-to-spreadsheet 2 Hospital No", oneRow({ "Hospital No": "9.43477E+09" })],
  ["number-lost-to-spreadsheet 2 Consolidation criterion", oneRow({ "Consolidation criterion": "03-Apr" })],
  ["out-of-usual-range 2 Steps", oneRow({ Steps: "12" })],
  ["cm-typed-as-mm 2 Gain (mm)", oneRow({ "Gain (mm)": "5.2", "Target (mm)": "50", "Nail diameter (mm)": "10.7" })],
  ["months-typed-as-days 4 FWB (days)", rows(...["150", "170", "6", "160"].map((days, i) => person(`A${i}`, { "FWB (days)": days })))],
  [
    "day-and-month-swapped 2 Date consolidated",
    oneRow({ "Date of surgery": "14/07/2023", "Date consolidated": "11/02/2023", "Last seen": "20/12/2023" }),
  ],
  ["dial-for-film 2 Gain (mm)", oneRow({ ...course, "Rate (mm/day)": "0.75", "Last distraction": "13/04/2023", "Gain (mm)": "38.25" })],
  // rows
  ["days-out-of-order 2 Start of distraction", oneRow({ ...course, "Start of distraction": "21/02/2022" })],
  ["days-out-of-order 2 Last distraction", oneRow({ ...course, "Last distraction": "20/02/2023" })],
  [
    "out-of-hard-range 2 Start of distraction",
    oneRow({ ...course, "Start of distraction": "14/04/2023", "Last distraction": "30/05/2023" }),
  ],
  ["one-row-two-sides 2 Side", oneRow({ Side: "both" })],
  ["which-segment 2", table({ MRN: "A1", Bone: "Femur", Side: "L", "Visit date": "14/03/2023", Cortices: "2" })],
  [
    "line-differs 3 Date of surgery",
    rows(person("A1", { Year: "2023" }), person("A1", { Year: "2021", Side: "R", "Date of surgery": "" })),
  ],
  ["duplicate-row 3", rows(person("A1", {}), person("A1", {}))],
  ["repeats-conflict 3 Sex", rows(person("A1", { Sex: "F" }), person("A1", { Side: "R", Sex: "M" }))],
  ["repeats-conflict 3 Gain (mm)", rows(person("A1", { "Gain (mm)": "50" }), person("A1", { "Gain (mm)": "52" }))],
  ["repeats-conflict 2 Final height (cm)", oneRow({ "Height pre-op (cm)": "160", "Final height (cm)": "165", "Last seen": "14/02/2023" })],
  ["fixator-event-without-fixator 2 Frame off", oneRow({ Device: "Magnetic nail", "Frame off": "14/08/2023" })],
  ["fixator-event-without-fixator 2 Complication 1", oneRow({ Device: "Magnetic nail", "Complication 1": "Pin infection" })],
  ["stroke-without-nail 2 Stroke (mm)", oneRow({ Device: "Ring fixator", "Stroke (mm)": "80" })],
  ["gain-over-bone 2 Gain (mm)", oneRow({ "Bone length (mm)": "30", "Gain (mm)": "50" })],
  ["premature-consolidation-or-slip 2 Date consolidated", oneRow({ ...course, "Date consolidated": "01/04/2023" })],
  ["implant-out-unhealed 2 Nail out", oneRow({ "Nail out": "14/08/2023", "Date consolidated": "14/10/2023" })],
  ["gain-over-stroke 2 Stroke (mm)", oneRow({ Device: "Magnetic nail", "Stroke (mm)": "50", "Gain (mm)": "60" })],
  [
    "sides-unlike 2 Gain (mm)",
    rows(
      person("A1", { Reason: "short stature", "Gain (mm)": "70" }),
      person("A1", { Reason: "short stature", Side: "R", "Gain (mm)": "50" }),
    ),
  ],
  [
    "gain-against-course 2 Gain (mm)",
    oneRow({
      ...course,
      "Gain (mm)": "30",
      "Visit 1 date": "01/03/2023",
      "Visit 1 distracted (mm)": "8",
      "Visit 2 date": "15/03/2023",
      "Visit 2 distracted (mm)": "22",
      "Visit 3 date": "29/03/2023",
      "Visit 3 distracted (mm)": "36",
    }),
  ],
  ["no-surgery-date 3 Date of surgery", rows(person("A1", { Year: "2023" }), person("A2", { Year: "2021", "Date of surgery": "" }))],
  ["reamed-not-over-nail 2 Reamed to (mm)", oneRow({ "Nail diameter (mm)": "10.7", "Reamed to (mm)": "12" })],
  ["index-disagrees 2 HI", oneRow({ "Date consolidated": "14/09/2023", "Gain (mm)": "50", HI: "60" })],
  ["weight-bearing-before-consolidation 2 FWB", oneRow({ FWB: "14/08/2023", "Date consolidated": "14/09/2023" })],
  ["follow-up-before-consolidation 2 Last seen", oneRow({ "Last seen": "14/08/2023", "Date consolidated": "14/09/2023" })],
  // across rows
  ["ids-differ-by-zeros 3 Hospital No", rows(person("0123", {}), person("123", { Side: "R" }))],
  ["age-against-year 3 Age", rows(person("A1", { Age: "20" }), person("A1", { Side: "R", Age: "30", "Date of surgery": "14/02/2025" }))],
  // identifiers
  ["identifier-in-cell 2 Device", oneRow({ Device: "NHS no 943 476 5870" })],
  ["identifier-in-cell 2 Gain (mm)", oneRow({ "Gain (mm)": "07700 900461" })],
  ["identifier-in-header Mr Testpatient reviewed", oneRow({ "Mr Testpatient reviewed": "1" })],
  ["free-text-in-code 2 Outcome", oneRow({ Outcome: "went home well and the bone looked solid on film at the last visit" })],
];

test.each(cases)("%s", async (said, text) => {
  const { findings } = await load(text);
  expect(saidOf(findings)).toContain(said);
});

test.each<Case>([
  ["months-converted 2 Consolidation (months)", oneRow({ "Consolidation (months)": "7" })],
  ["age-banded 2 Age", oneRow({ Age: "93" })],
  ["column-dropped Ward", oneRow({ Ward: "7" })],
  ["column-dropped Surname", oneRow({ Surname: "Quornaruth" })],
])("noted: %s", async (said, text) => {
  const { findings } = await load(text);
  expect(saidOf(findings, ["note"])).toContain(said);
});

test("against what is held: line, sex, near surgery, changes, nothing new", async () => {
  const held = (await load(rows(person("A1", { Sex: "F", "Gain (mm)": "50" }), person("A2", {}), person("A3", {})))).rows;
  const again = rows(
    person("A1", { Sex: "M", "Gain (mm)": "52" }),
    person("A2", {}),
    person("A3", { "Date of surgery": "24/02/2023" }),
    person("A2", { "Date of surgery": "", Year: "2019", Side: "R" }),
  );
  const { findings, counts } = await load(again, { held });
  expect(saidOf(findings).sort()).toEqual([
    "line-differs 5 Date of surgery",
    "near-duplicate 4 Date of surgery",
    "no-surgery-date 5 Date of surgery",
    "sex-changed 2 Sex",
  ]);
  expect(saidOf(findings, ["note"])).toEqual(expect.arrayContaining(["already-held 3", "changed-since-last 2 Sex"]));
  expect(counts.changed).toMatchObject({ person: 1, segment: 1 });
  expect(counts.unchanged).toMatchObject({ person: 2, segment: 1 });
  expect(counts.fresh).toMatchObject({ segment: 1 });
});

test("a file's name that names a person is suspected", async () => {
  const { sheet } = readSheet(utf8(oneRow()), { file: "Mr Testpatient.csv" });
  const { findings } = await load([], { sheets: sheet ? [sheet] : [] });
  expect(saidOf(findings)).toContain("identifier-suspected");
});

test("every finding of the codebook is raised by a test of intake", async () => {
  const inReadTests: readonly FindingCode[] = [
    "unreadable-encoding",
    "ragged-row",
    "encoding-guessed",
    "blank-header",
    "title-row-skipped",
  ];
  const heldTests: readonly FindingCode[] = ["near-duplicate", "sex-changed", "changed-since-last", "already-held", "identifier-suspected"];
  const noted: readonly FindingCode[] = ["months-converted", "age-banded", "column-dropped"];
  const raised = new Set<string>([
    ...cases.map(([said]) => said.split(" ")[0] as string),
    ...fileRefusals,
    ...inReadTests,
    ...heldTests,
    ...noted,
  ]);
  expect(Object.keys(findingSeverities).filter((code) => !raised.has(code))).toEqual([]);
});

test("the rows of files without a fault pass the check that runs where they are kept", async () => {
  const { rows: stripped, counts } = await load(
    oneRow({ ...course, DOB: "03/05/2001", Device: "Magnetic nail", "Date consolidated": "20/09/2023" }),
  );
  expect(counts.made.segment).toBe(1);
  expect(checkRows(stripped)).toEqual([]);
});

const twoRows = (more: Readonly<Record<string, string>>, other: Readonly<Record<string, string>> = {}) =>
  rows(
    person("K4471", { Surname: "Zedmarrow", Consultant: "Miss Ardvenna", ...more }),
    person("K4472", { Surname: "Quillfern", ...other }),
  );

test.each<Case>([
  ["identifier-in-cell 2 Outcome", twoRows({ Outcome: "zedmarrow healed" })],
  ["identifier-in-cell 2 Outcome", twoRows({ Outcome: "ask Quillfern" })],
  ["identifier-in-cell 2 Outcome", twoRows({ Outcome: "see k4472" })],
  ["identifier-in-cell 2 Vented", twoRows({ Vented: "Ardvenna" })],
  ["identifier-in-cell 2 Releases", twoRows({ Releases: "ITB by Ardvenna" })],
  ["identifier-in-cell 2 Gain (mm)", twoRows({ "Gain (mm)": "as Ardvenna" })],
  ["identifier-in-cell 2 Unit", twoRows({ Unit: "Ardvenna" })],
  ["identifier-in-header Clinic of Ardvenna", twoRows({ "Clinic of Ardvenna": "1" })],
])("what the file shows to be a name or number is looked for elsewhere: %s", async (said, text) => {
  expect(saidOf((await load(text)).findings)).toContain(said);
});

test("names of one file are looked for in the others, and in their names", async () => {
  const visits = table({ MRN: "K4471", Bone: "Femur", Side: "L", "Visit date": "14/03/2023", Nerve: "Zedmarrow: none" });
  expect(saidOf((await load([twoRows({}), visits])).findings)).toContain("identifier-in-cell 2 Nerve");
  const { sheet } = readSheet(utf8(twoRows({})), { file: "list for quillfern.csv" });
  expect(saidOf((await load([], { sheets: sheet ? [sheet] : [] })).findings)).toContain("identifier-suspected");
});

test("a make that many rows share is asked about, though a surname is like it", async () => {
  const all = Array.from({ length: 8 }, (_, i) => person(`A${i}`, { Surname: i === 0 ? "Zedmarrow" : "", Device: "Zedmarrow nail" }));
  const { findings, questions } = await load(rows(...all));
  expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
  expect(questions.map(({ code, rows: waiting }) => [code, waiting.length])).toEqual([["value-unknown", 8]]);
});

test.each<Case>([
  ["identifier-in-cell 2 Gain (mm)", oneRow({ "Gain (mm)": "9434765870" })],
  ["identifier-in-cell 2 Weight", oneRow({ Weight: "07700900461" })],
  ["identifier-in-cell 2 Gain (mm)", oneRow({ "Hospital No": "0123931", "Gain (mm)": "123931" })],
  ["identifier-suspected 2 Gain (mm)", oneRow({ "Gain (mm)": "19910123" })],
  ["out-of-hard-range 2 Gain (mm)", oneRow({ "Gain (mm)": "33261" })],
])("a person's number typed in a column of numbers is never quoted: %s", async (said, text) => {
  const { findings } = await load(text);
  expect(saidOf(findings)).toContain(said);
  expect(JSON.stringify(findings)).not.toMatch(/943476|77009004|123931|19910123|33261/);
});

test("a form in half of its column counts as more: dates among flags, numbers that nearly all differ", async () => {
  const dates = ["14/02/2021", "15/02/2021", "", "16/02/2021"];
  const flags = rows(...dates.map((date, i) => person(`A${i}`, { Vented: date })));
  expect(saidOf((await load(flags)).findings)).toContain("identifier-in-cell 2 Vented");
  const numbers = rows(...Array.from({ length: 9 }, (_, i) => person(`A${i}`, { "Theatre no": String(48_000 + i * 17) })));
  const { findings } = await load(numbers);
  expect(saidOf(findings)).toEqual(["identifier-suspected Theatre no"]);
  expect(findings.find(({ code }) => code === "identifier-suspected")?.mend).toContain("record number");
});

test("a dropped column says what kinds of identifier it holds", async () => {
  const { dropped } = await load(twoRows({ Ward: "call 07700 900461", Surname: "Zedmarrow" }));
  expect(dropped.map(({ header, holds }) => [header, holds])).toEqual([
    ["Surname", ["name"]],
    ["Ward", ["phone"]],
  ]);
});
