import { expect, test } from "vitest";
import { type KeyRing, parseMapping, prepare, readSheet, refusedCsv } from "@/lib/intake";
import { utf8 } from "./bytes";
import { load, oneRow, ring, saidOf, sheetOf, table, today } from "./load";

const onlySegment = async (more: Readonly<Record<string, string>>, options: Parameters<typeof load>[1] = {}) => {
  const prepared = await load(oneRow(more), options);
  const [segment] = prepared.rows.segment;
  if (!segment) throw new Error(`onlySegment requires a row that stands, received ${saidOf(prepared.findings).join(", ")}`);
  return { ...prepared, segment };
};

test("days are distances on the person's own line; year, quarter and audit year are of the calendar", async () => {
  const { segment } = await onlySegment(
    { "Start of distraction": "21/02/2023", "Date consolidated": "14/08/2023" },
    { auditYearStartsIn: 4 },
  );
  expect((segment.distractionStartDay ?? 0) - segment.surgeryDay).toBe(7);
  expect((segment.consolidationDay ?? 0) - segment.surgeryDay).toBe(181); // 28 − 14 + 31 + 30 + 31 + 30 + 31 + 14
  expect(segment).toMatchObject({ surgeryYear: 2023, surgeryQuarter: 1, auditYear: 2022 });
});

test("a date and the days since surgery give the same row", async () => {
  const byDate = await onlySegment({ "Date consolidated": "14/08/2023" });
  const byDays = await onlySegment({ "Days to consolidation": "181" });
  const byWeeks = await onlySegment({ "Consolidation (weeks)": "25.857" });
  expect(byDays.segment).toEqual(byDate.segment);
  expect(byWeeks.segment).toEqual(byDate.segment);
});

test("months are 30.4375 days, rounded", async () => {
  const { segment } = await onlySegment({ "Consolidation (months)": "6" });
  expect((segment.consolidationDay ?? 0) - segment.surgeryDay).toBe(183); // 182.625
});

test("lengths are millimetres, whatever their unit; the unit typed in a cell comes before that of the header", async () => {
  expect((await onlySegment({ "Gain (cm)": "4.55" })).segment.gainMm).toBe(45.5);
  expect((await onlySegment({ "Gain (in)": "2" })).segment.gainMm).toBe(50.8);
  expect((await onlySegment({ "Gain (mm)": "4.5 cm" })).segment.gainMm).toBe(45);
  expect((await onlySegment({ Gain: "5.1" }, { lengths: "cm" })).segment.gainMm).toBe(51);
  expect((await onlySegment({ Gain: "5.1" }, { mapping: { units: { Gain: "cm" } } })).segment.gainMm).toBe(51);
  expect((await onlySegment({ Gain: "51" })).segment.gainMm).toBe(51);
});

test("age from birth and surgery: a decimal below 18, whole years from 18, 90 for 90 and over", async () => {
  expect((await onlySegment({ DOB: "14/08/2010" })).segment.ageAtSurgeryYears).toBe(12.5);
  expect((await onlySegment({ DOB: "15/02/2000" })).segment.ageAtSurgeryYears).toBe(22);
  expect((await onlySegment({ DOB: "01/01/1930" })).segment.ageAtSurgeryYears).toBe(90);
  expect((await onlySegment({ "Age (months)": "150" })).segment.ageAtSurgeryYears).toBe(12.5);
});

test.each([
  ["Femur L", "", "femur", "left"],
  ["LF", "", "femur", "left"],
  ["RT", "", "tibia", "right"],
  ["left tibia", "", "tibia", "left"],
  ["Femur", "R", "femur", "right"],
  ["Tibia and fibula", "rt", "tibia", "right"],
])("bone “%s” and side “%s”", async (bone, side, expectedBone, expectedSide) => {
  const { rows } = await load(oneRow({ Bone: bone, Side: side }));
  expect(rows.segment[0]).toMatchObject({ bone: expectedBone, side: expectedSide });
});

test("heights before and final are two body measures, on the day of surgery and of last follow-up", async () => {
  const { rows } = await load(
    oneRow({ "Height pre-op (cm)": "150.5", "Final height (cm)": "157", "Last seen": "14/02/2024", "Femur length (mm)": "400" }),
  );
  const [segment] = rows.segment;
  expect(rows.bodyMeasure).toHaveLength(2);
  expect(rows.bodyMeasure[0]).toMatchObject({
    occasion: "before",
    statureMm: 1505,
    bodyDay: segment?.surgeryDay,
    bodyDayFrom: "surgery",
    femurLeftMm: 400,
  });
  expect(rows.bodyMeasure[1]).toMatchObject({
    occasion: "final",
    statureMm: 1570,
    bodyDay: segment?.lastFollowUpDay,
    bodyDayFrom: "last-follow-up",
    femurLeftMm: null,
  });
});

test("heights on dates of their own", async () => {
  const { rows } = await load(oneRow({ "Height pre-op (cm)": "150.5", "Date of height": "04/02/2023" }));
  expect(rows.bodyMeasure[0]).toMatchObject({ bodyDayFrom: "recorded" });
  expect((rows.segment[0]?.surgeryDay ?? 0) - (rows.bodyMeasure[0]?.bodyDay ?? 0)).toBe(10);
});

test("an equal final height on a later day adds no row", async () => {
  const text = table({
    MRN: ["A1", "A1"],
    Bone: ["Femur", "Femur"],
    Side: ["L", "R"],
    "Op date": ["14/02/2023", "14/02/2023"],
    "Last seen": ["14/02/2024", "14/05/2024"],
    "Final height (cm)": ["157", "157"],
  });
  const { rows } = await load(text);
  expect(rows.bodyMeasure).toHaveLength(1);
  expect(rows.bodyMeasure[0]?.bodyDay).toBe(rows.segment[0]?.lastFollowUpDay);
});

test("numbered complications are events; with them, or with *none*, events were looked for", async () => {
  const events = {
    "Complication 1": "Pin infection",
    "Complication 1 date": "14/03/2023",
    "Complication 1 treatment": "antibiotics oral",
    "Complication 2": "",
    "Complication 2 date": "",
  };
  const { rows } = await load(oneRow(events));
  expect(rows.event).toHaveLength(1);
  expect(rows.event[0]).toMatchObject({
    eventType: "pin-site-infection",
    handling: "oral-drug",
    eventNumber: 1,
    bone: "femur",
    side: "left",
  });
  expect((rows.event[0]?.onsetDay ?? 0) - (rows.segment[0]?.surgeryDay ?? 0)).toBe(28);
  expect(rows.segment[0]?.eventsLookedFor).toBe("fully");
  expect((await onlySegment({ "Complication 1": "-" })).segment.eventsLookedFor).toBe("fully");
  expect((await onlySegment({ "Complication 1": "" })).segment.eventsLookedFor).toBeNull();
  expect((await onlySegment({})).segment.eventsLookedFor).toBeNull();
  expect((await onlySegment({ "Complication 1": "none", "Events recorded": "Serious only" })).segment.eventsLookedFor).toBe("serious-only");
});

test("the same event twice on one day is numbered", async () => {
  const { rows } = await load(oneRow({ "Complication 1": "Knee stiffness", "Complication 2": "Knee stiffness" }));
  expect(rows.event.map(({ eventNumber }) => eventNumber)).toEqual([1, 2]);
});

test("an event that followed from another names it by its number in the row", async () => {
  const events = { "Complication 1": "Muscle contracture", "Complication 2": "Subluxation", "Complication 2 consequence of": "1" };
  expect((await load(oneRow(events))).rows.event[1]).toMatchObject({ eventType: "subluxation", consequenceOf: "muscle-contracture" });
  const { findings } = await load(oneRow({ ...events, "Complication 2 consequence of": "3" }));
  expect(saidOf(findings)).toEqual(["not-a-code 2 Complication 2 consequence of"]);
});

test("a time since surgery that ends after today is in the future", async () => {
  const { findings } = await load(oneRow({ "Date of surgery": "14/10/2026", "Consolidation (days)": "43" }));
  expect(saidOf(findings)).toEqual(["date-in-future 2 Consolidation (days)"]);
  expect(saidOf((await load(oneRow({ "Date of surgery": "14/10/2026", "Consolidation (days)": "42" }))).findings)).toEqual([]);
});

test("a row that is set aside asks nothing", async () => {
  const { questions, findings } = await load(oneRow({ Side: "", Device: "Nail" }));
  expect(saidOf(findings)).toEqual(["required-missing 2 Side", "value-unknown 2 Device"]);
  expect(questions).toEqual([]);
});

test("a saved mapping holds no header and no spelling in which a person is named", async () => {
  const text = oneRow({ "Mr Testpatient implant": "Dr Testpatient's nail" });
  const mapping = {
    columns: { "Mr Testpatient implant": "device" },
    values: { device: { "Dr Testpatient's nail": "magnetic-nail", "own nail": "magnetic-nail" } },
  };
  const prepared = await load(text, { mapping });
  expect(prepared.rows.segment[0]?.device).toBe("magnetic-nail");
  expect(JSON.stringify(prepared.mapping)).not.toContain("Testpatient");
  expect(prepared.mapping.values).toEqual({ device: { "own nail": "magnetic-nail" } });
});

test("a list of releases fills a flag each; *none* says that none was done", async () => {
  expect((await onlySegment({ Releases: "ITB, rectus + TAL" })).segment).toMatchObject({
    releaseIliotibialBand: true,
    releaseRectus: true,
    releaseGastrocnemius: true,
    releaseFascia: null,
  });
  expect((await onlySegment({ Releases: "None" })).segment).toMatchObject({ releaseIliotibialBand: false, releaseFascia: false });
});

test("a blank flag is not recorded, never no", async () => {
  expect((await onlySegment({ Vented: "" })).segment.canalVented).toBeNull();
  expect((await onlySegment({ Vented: "n" })).segment.canalVented).toBe(false);
  expect((await onlySegment({ Vented: "x" })).segment.canalVented).toBe(true);
});

test("a file without dates: the line is undated, the surgery a label of year and episode, durations count from it", async () => {
  const { rows, findings } = await load(
    table({
      "Study ID": "7",
      Bone: "Femur",
      Side: "L",
      Year: "2021",
      Age: "14.2",
      Episode: "2",
      "Time to union (months)": "8",
      "Gain (mm)": "50",
    }),
  );
  expect(rows.person[0]?.line).toBe("undated");
  expect(rows.segment[0]).toMatchObject({
    surgeryDay: 20210002,
    surgeryYear: 2021,
    surgeryQuarter: null,
    auditYear: null,
    ageAtSurgeryYears: 14.2,
  });
  expect(rows.segment[0]?.consolidationDay).toBe(20210002 + 244); // 8 × 30.4375 = 243.5
  expect(saidOf(findings)).toEqual([]);
});

test("a serial number of a spreadsheet in a column of dates", async () => {
  const byDate = await onlySegment({ "Last seen": "15/03/2025" });
  expect((await onlySegment({ "Last seen": "45731" })).segment).toEqual(byDate.segment);
});

test("answers: premature becomes an event and a blank date, slip a blank date, a reason is kept, not yet keeps the day last seen", async () => {
  const early = { "Start of distraction": "21/02/2023", "Last distraction": "12/04/2023", "Date consolidated": "01/04/2023" };
  const premature = await load(oneRow(early), { mapping: { answers: { "premature-consolidation-or-slip": "premature" } } });
  expect(premature.rows.event[0]).toMatchObject({ eventType: "premature-consolidation", eventNumber: 1 });
  expect(premature.rows.segment[0]?.consolidationDay).toBeNull();
  expect(premature.questions).toEqual([]);
  const slip = await load(oneRow(early), {
    rowAnswers: [{ file: "log.csv", row: 2, code: "premature-consolidation-or-slip", answer: "slip" }],
  });
  expect(slip.rows.event).toEqual([]);
  expect(slip.rows.segment[0]?.consolidationDay).toBeNull();
  const out = await onlySegment(
    { "Nail out": "14/08/2023", "Date consolidated": "14/10/2023" },
    { mapping: { answers: { "implant-out-unhealed": "breakage" } } },
  );
  expect(out.segment.implantOutReason).toBe("breakage");
  const open = { "Date consolidated": "", "Last seen": "14/02/2024" };
  const notYet = await onlySegment(open, { mapping: { answers: { "blank-consolidation": "not-yet" } } });
  expect(notYet.segment.lastNotHealedDay).toBe(notYet.segment.lastFollowUpDay);
  expect(
    (await onlySegment(open, { mapping: { answers: { "blank-consolidation": "not-recorded" } } })).segment.lastNotHealedDay,
  ).toBeNull();
});

test("two numbers that differ by zeros: one person or two, by the answer", async () => {
  const text = table({ MRN: ["0123", "123"], Bone: ["Femur", "Femur"], Side: ["L", "R"], "Op date": ["14/02/2023", "14/02/2023"] });
  const same = await load(text, { mapping: { answers: { "ids-differ-by-zeros": "same" } } });
  expect(same.rows.person).toHaveLength(1);
  const different = await load(text, { mapping: { answers: { "ids-differ-by-zeros": "different" } } });
  expect(different.rows.person).toHaveLength(2);
  expect(different.questions).toEqual([]);
});

test("near one held: the same operation takes the surgery held, a new one its own", async () => {
  const held = (await load(oneRow({ "Gain (mm)": "50" }))).rows;
  const text = oneRow({ "Date of surgery": "16/02/2023", "Gain (mm)": "52" });
  const same = await load(text, { held, mapping: { answers: { "near-duplicate": "same" } } });
  expect(same.rows.segment[0]).toMatchObject({ surgeryDay: held.segment[0]?.surgeryDay, gainMm: 52 });
  const fresh = await load(text, { held, mapping: { answers: { "near-duplicate": "new" } } });
  expect((fresh.rows.segment[0]?.surgeryDay ?? 0) - (held.segment[0]?.surgeryDay ?? 0)).toBe(2);
});

test("a spelling of the unit's own is a code by the mapping; an empty code is not recorded", async () => {
  const device = (values: Record<string, string>) => onlySegment({ Device: "Mag nail" }, { mapping: { values: { device: values } } });
  expect((await device({ "mag nail": "magnetic-nail" })).segment.device).toBe("magnetic-nail");
  expect((await device({ "Mag nail": "" })).segment.device).toBeNull();
});

test("comments stay where they are, and coded ones become events", async () => {
  const text = oneRow({ Comments: "Knee stiff at six weeks, physio; seen by Dr Testpatient" });
  const open = await load(text);
  expect(open.comments).toMatchObject([{ row: 2, header: "Comments", coded: false }]);
  expect(open.rows.segment[0]?.eventsLookedFor).toBeNull();
  const coded = await load(text, {
    eventsCoded: [
      {
        file: "log.csv",
        row: 2,
        events: [{ eventType: "stiffness", onset: { daysAfterSurgery: 42 }, values: { handling: "advice-or-physiotherapy" } }],
      },
    ],
  });
  expect(coded.comments[0]?.coded).toBe(true);
  expect(coded.rows.event[0]).toMatchObject({ eventType: "stiffness", handling: "advice-or-physiotherapy", eventNumber: 1 });
  expect(coded.rows.segment[0]?.eventsLookedFor).toBe("fully");
  const nothing = await load(text, { eventsCoded: [{ file: "log.csv", row: 2, events: [] }] });
  expect(nothing.rows.event).toEqual([]);
  expect(nothing.rows.segment[0]?.eventsLookedFor).toBe("fully");
});

test("no cell of a name, number, date or comment is in what is said or sent", async () => {
  const planted = [
    "Quornaruthe",
    "0187740",
    "23/01/1991",
    "1991-01-23",
    "07700 900768",
    "Ardvenna",
    "14/02/2023",
    "2023-02-14",
    "knee was stiff",
  ];
  const more = {
    MRN: "0187740",
    DOB: "23/01/1991",
    Surname: "Quornaruthe",
    Consultant: "Miss Ardvenna",
    Tel: "07700 900768",
    Comments: "knee was stiff",
    Device: "Quornaruthe",
    Entry: "0187740",
    "Gain (mm)": "Quornaruthe",
  };
  const { rows, findings, dropped, counts, groups } = await load(oneRow(more).replace("Hospital No,", "Study ID,"));
  expect(findings.length).toBeGreaterThan(5);
  const said = JSON.stringify({ rows, findings, dropped, counts, groups });
  expect(planted.filter((text) => said.includes(text))).toEqual([]);
});

test("the order of a unit's yearly files makes no difference to its rows", async () => {
  const a = table({
    MRN: ["A1", "A2"],
    Bone: ["Femur", "Femur"],
    Side: ["L", "L"],
    "Op date": ["14/02/2023", "15/03/2023"],
    Sex: ["F", ""],
  });
  const b = table({
    MRN: ["A1", "A2"],
    Bone: ["Femur", "Femur"],
    Side: ["R", "R"],
    "Op date": ["14/02/2024", "15/03/2024"],
    Sex: ["", "M"],
  });
  const sorted = async (texts: string[]) => {
    const { rows } = await load(texts);
    return Object.fromEntries(Object.entries(rows).map(([name, all]) => [name, all.map((row) => JSON.stringify(row)).sort()]));
  };
  expect(await sorted([b, a])).toEqual(await sorted([a, b]));
});

test("questions about columns come before any row is read", async () => {
  const { stage, rows, questions } = await load(oneRow({ "Date of surgery": "03/04/2023", Gain: "5.1" }));
  expect(stage).toBe("columns");
  expect(rows.segment).toEqual([]);
  expect(questions.map(({ code, settledBy, choices }) => [code, settledBy, choices])).toEqual([
    ["date-order-unknown", "dates", ["dmy", "mdy", "ymd"]],
    ["unit-unknown", "units", ["mm", "cm"]],
  ]);
  expect(questions[0]?.samples).toEqual([{ row: 2, cell: "03/04/2023" }]);
});

test("an order said that many dates contradict is asked about again; a slip or two is not", async () => {
  const dates = ["13/02/2023", "28/03/2023", "03/04/2023"];
  const text = (list: readonly string[]) =>
    table({ MRN: list.map((_, i) => `A${i}`), Bone: list.map(() => "Femur"), Side: list.map(() => "L"), "Op date": list });
  const wrong = await load(text(dates), { mapping: { dates: "mdy" } });
  expect([wrong.stage, saidOf(wrong.findings)]).toEqual(["columns", ["date-order-unknown Op date"]]);
  const slip = await load(text(["03/25/2023", ...Array(9).fill("03/04/2023")]), { mapping: { dates: "dmy" } });
  expect(saidOf(slip.findings)).toEqual(["date-impossible 2 Op date"]);
});

test("without a key the columns are matched and nothing more", async () => {
  const { stage, matches } = await prepare({ sheets: [sheetOf(oneRow())], ring: null, today });
  expect(stage).toBe("columns");
  expect(matches[0]?.match.columns.map(({ target }) => target?.field)).toEqual(["localId", "bone", "side", "surgeryDay"]);
});

test("one answer settles a spelling in all its rows", async () => {
  const text = table({
    MRN: ["A1", "A2", "A3"],
    Bone: ["Femur", "Femur", "Femur"],
    Side: ["L", "L", "L"],
    "Op date": ["14/02/2023", "15/03/2023", "15/03/2023"],
    Device: ["Frame", "frame", "Zzframe"],
  });
  const { questions } = await load(text);
  expect(questions.map(({ code, rows, spelling }) => [code, rows, spelling])).toEqual([
    ["value-unknown", [2, 3], { text: "Frame", ofOurs: true }],
    ["value-unknown", [4], { text: "Zzframe", ofOurs: false }],
  ]);
});

test("the settled mapping brings the same rows without a question", async () => {
  const text = oneRow({ "Date of surgery": "03/04/2023", Gain: "5.1", Ward: "7" });
  const first = await load(text, { lengths: "cm", mapping: { dates: "mdy" } });
  expect(first.mapping).toMatchObject({ dates: "mdy", columns: { Gain: "gainMm", "Hospital No": "localId" }, units: { Gain: "cm" } });
  const saved = parseMapping(JSON.parse(JSON.stringify(first.mapping)));
  const again = await load(text, { mapping: saved });
  expect(again.questions).toEqual([]);
  expect(again.rows).toEqual(first.rows);
});

test.each([
  { columns: { A: 3 } },
  { columns: { A: "gainmm" } },
  { columns: { A: "person" } },
  { values: { device: { x: "nail" } } },
  { values: { gainMm: { x: "1" } } },
  { dates: "dym" },
  { answers: { "near-duplicate": "maybe" } },
  { extra: 1 },
  [],
])("a mapping of another shape is refused: %j", (json) => {
  expect(() => parseMapping(json)).toThrow(TypeError);
});

test("rows set aside come back in their own columns with the reasons, say that they hold identifiers, and go in when mended", async () => {
  const text = table({
    MRN: ["A1", "A2", "=A3"],
    Surname: ["Quornaruthe", 'Zed "Z" Example', "Third"],
    Bone: ["Femur", "Femur", "Femur"],
    Side: ["L", "", "both"],
    "Op date": ["14/02/2023", "15/03/2023", "16/03/2023"],
    "Gain (mm)": ["50", "45", "-5"],
  });
  const csv = refusedCsv(await load(text));
  const [warning, header, ...rows] = csv.trimEnd().split("\r\n");
  expect(warning).toContain("Holds names and numbers of patients");
  expect(header).toBe("MRN,Surname,Bone,Side,Op date,Gain (mm),Why set aside");
  expect(rows).toHaveLength(2);
  expect(rows[0]).toContain('A2,"Zed ""Z"" Example",Femur,,15/03/2023,45,');
  expect(rows[1]).toContain("'=A3,Third,Femur,both,16/03/2023,-5,");
  const mended = csv.replace("Femur,,15/03/2023", "Femur,R,15/03/2023").replace("Femur,both,16/03/2023,-5", "Femur,L,16/03/2023,5");
  const { sheet } = readSheet(utf8(mended), { file: "refused.csv" });
  expect(sheet?.rows[1]?.[0]).toBe("=A3");
  const back = await load([], { sheets: sheet ? [sheet] : [] });
  expect(back.counts.made.segment).toBe(2);
});

test("findings come in the order of what they cost", async () => {
  const text = table({
    MRN: ["A1", "A2", "A3", "A4"],
    Bone: ["Femur", "Femur", "Femur", "Femur"],
    Side: ["", "", "L", "L"],
    "Op date": ["14/02/2023", "15/03/2023", "16/03/2023", "17/03/2023"],
    "Gain (mm)": ["50", "45", "see film", "9"],
  });
  const { groups, refused, counts } = await load(text);
  expect(groups.filter(({ severity }) => severity !== "note").map(({ code, rows, bringsBack }) => [code, rows, bringsBack])).toEqual([
    ["required-missing", 2, 2],
    ["not-a-number", 1, 1],
    ["out-of-usual-range", 1, 0],
  ]);
  expect(refused.map(({ row }) => row)).toEqual([2, 3, 4]);
  expect(counts).toMatchObject({ rowsRead: 4, rowsRefused: 3 });
});

test("progress moves, and a stop leaves nothing", async () => {
  const ids = Array.from({ length: 2500 }, (_, i) => `A${i}`);
  const text = table({ MRN: ids, Bone: ids.map(() => "Femur"), Side: ids.map(() => "L"), "Op date": ids.map(() => "14/02/2023") });
  const steps: string[] = [];
  await load(text, { onProgress: ({ step, done }) => steps.push(`${step} ${done}`) });
  expect(steps).toEqual(expect.arrayContaining(["read 1000", "read 2500", "key 2500", "strip 2500", "check 2500", "compare 7500"]));
  const stop = new AbortController();
  const stopped = load(text, { signal: stop.signal, onProgress: ({ step }) => step === "key" && stop.abort(new Error("told to stop")) });
  await expect(stopped).rejects.toThrow("told to stop");
});

test("progress never falls within a step, and each step ends", async () => {
  const some = (n: number, from: number) => Array.from({ length: n }, (_, i) => `A${i + from}`);
  const sheet = (ids: readonly string[]) =>
    table({ MRN: ids, Bone: ids.map(() => "Femur"), Side: ids.map(() => "L"), "Op date": ids.map(() => "14/02/2023") });
  const told = new Map<string, { done: number; of: number }>();
  await load([sheet(some(1200, 0)), sheet(some(1500, 5000))], {
    onProgress: ({ step, done, of }) => {
      expect(done).toBeGreaterThanOrEqual(told.get(step)?.done ?? 0);
      told.set(step, { done, of });
    },
  });
  expect([...told.keys()]).toEqual(["read", "key", "strip", "check", "compare"]);
  for (const { done, of } of told.values()) expect(done).toBe(of);
});

test.each(["read", "key", "strip", "check", "compare"])("told to stop at %s, it stops", async (at) => {
  const ids = Array.from({ length: 2500 }, (_, i) => `A${i}`);
  const text = table({ MRN: ids, Bone: ids.map(() => "Femur"), Side: ids.map(() => "L"), "Op date": ids.map(() => "14/02/2023") });
  const stop = new AbortController();
  const later: string[] = [];
  const onProgress = ({ step }: { step: string }) => {
    if (stop.signal.aborted) later.push(step);
    if (step === at) stop.abort(new Error("told to stop"));
  };
  await expect(load(text, { signal: stop.signal, onProgress })).rejects.toThrow("told to stop");
  expect(later).toEqual([]);
});

test("each person is keyed once, however many rows", async () => {
  let asked = 0;
  const counting: KeyRing = {
    ...ring,
    persons: (unit, ids, onChunk) => {
      asked += ids.length;
      return ring.persons(unit, ids, onChunk);
    },
  };
  const ids = Array.from({ length: 40 }, (_, i) => `A${i % 10}`);
  await load(
    table({
      MRN: ids,
      Bone: ids.map((_, i) => (i < 20 ? "Femur" : "Tibia")),
      Side: ids.map((_, i) => (i % 20 < 10 ? "L" : "R")),
      "Op date": ids.map(() => "14/02/2023"),
    }),
    { ring: counting },
  );
  expect(asked).toBe(10);
});
