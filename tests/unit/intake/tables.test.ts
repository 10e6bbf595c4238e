import { expect, test } from "vitest";
import { fieldsOf, snake, tableNames, templateNames } from "@/lib/codebook";
import { matchSheet, targetId, templateCsv } from "@/lib/intake";
import { load, saidOf, sheetOf, table } from "./load";

const segments = table({
  MRN: ["A1", "A1", "A2"],
  Bone: ["Femur", "Femur", "Tibia"],
  Side: ["L", "R", "L"],
  "Op date": ["14/02/2023", "15/02/2024", "16/03/2023"],
  Episode: ["1", "1", "1"],
});
const visits = table({
  MRN: ["A1", "A1", "A2", "A3"],
  Bone: ["Femur", "Femur", "Tibia", "Femur"],
  Side: ["L", "L", "L", "L"],
  "Visit date": ["14/03/2023", "14/04/2023", "16/04/2023", "17/04/2023"],
  Cortices: ["1", "2", "0", "1"],
  "Distracted (mm)": ["10", "40", "12", "1"],
});

test("visits find the segment of their person, bone and side in the files beside them, in either order", async () => {
  for (const texts of [
    [segments, visits],
    [visits, segments],
  ]) {
    const { rows, findings } = await load(texts);
    expect(rows.visit).toHaveLength(3);
    expect(rows.visit[0]).toMatchObject({ cortices: 1, distractedMm: 10, bone: "femur", side: "left" });
    expect((rows.visit[0]?.visitDay ?? 0) - (rows.visit[0]?.surgeryDay ?? 0)).toBe(28);
    expect(saidOf(findings).map((said) => said.split(" ").slice(0, 2).join(" "))).toEqual(["which-segment 5"]);
  }
});

test("visits alone find their segments among those held; brought again they are held as they are", async () => {
  const held = (await load(segments)).rows;
  const first = await load(visits, { held });
  expect(first.rows.visit).toHaveLength(3);
  expect(first.counts.fresh).toMatchObject({ visit: 3, segment: 0 });
  const again = await load(visits, { held: { ...held, visit: first.rows.visit } });
  expect(again.counts.unchanged).toMatchObject({ visit: 3 });
});

test("of two segments of one bone the surgery date or the episode tells which", async () => {
  const two = table({
    MRN: ["A1", "A1"],
    Bone: ["Femur", "Femur"],
    Side: ["L", "L"],
    "Op date": ["14/02/2019", "14/02/2023"],
    Episode: ["1", "2"],
  });
  const visit = { MRN: "A1", Bone: "Femur", Side: "L", "Visit date": "14/03/2023", Cortices: "1" };
  expect(saidOf((await load([two, table(visit)])).findings)).toEqual(["which-segment 2"]);
  const byEpisode = await load([two, table({ ...visit, Episode: "2" })]);
  const byDate = await load([two, table({ ...visit, "Op date": "14/02/2023" })]);
  expect(byEpisode.rows.visit).toEqual(byDate.rows.visit);
  expect((byDate.rows.visit[0]?.visitDay ?? 0) - (byDate.rows.visit[0]?.surgeryDay ?? 0)).toBe(28);
});

test("an event with neither bone nor side is one of the person; *none* is no event", async () => {
  const events = table({
    MRN: ["A1", "A1", "A2"],
    Bone: ["", "Femur", "Tibia"],
    Side: ["", "L", "L"],
    Complication: ["DVT", "Knee stiffness", "none"],
    "Complication date": ["14/03/2023", "14/04/2023", ""],
    Treatment: ["oral drug", "physio", ""],
  });
  const { rows, findings } = await load([segments, events]);
  expect(rows.event).toMatchObject([
    { eventType: "deep-vein-thrombosis", bone: null, side: null, surgeryDay: null, eventNumber: 1 },
    { eventType: "stiffness", bone: "femur", handling: "advice-or-physiotherapy" },
  ]);
  expect(saidOf(findings)).toEqual([]);
});

test("scores, body measures and persons name the person alone", async () => {
  const scores = table({ MRN: ["A1", "A1"], Score: ["limb-score", "other"], Date: ["14/03/2024", "14/03/2024"], Value: ["81", "3"] });
  const bodies = table({ MRN: "A1", "Date measured": "13/02/2023", Occasion: "before", "Height (cm)": "151", "Sitting height (cm)": "80" });
  const persons = table({ MRN: "A1", Sex: "F", Smoking: "ex" });
  const { rows, findings } = await load([segments, scores, bodies, persons], { scores: ["limb-score"] });
  expect(rows.score).toMatchObject([{ scoreCode: "limb-score", scoreValue: 81 }]);
  expect(rows.bodyMeasure).toMatchObject([{ statureMm: 1510, sittingHeightMm: 800, occasion: "before", bodyDayFrom: "recorded" }]);
  expect(rows.person.find(({ person }) => person === rows.score[0]?.person)).toMatchObject({
    sex: "female",
    smoking: "ever",
    line: "dated",
  });
  expect(saidOf(findings)).toEqual(["not-a-code 3 Score"]);
});

test("a unit that isn't listed is no unit, since a name has the form of one", async () => {
  const text = (unit: string) => table({ MRN: "A1", Unit: unit, Bone: "Femur", Side: "L", "Op date": "14/02/2023" });
  expect((await load(text("north"), { units: ["north", "south"] })).rows.person[0]?.unit).toBe("north");
  expect(saidOf((await load(text("quornaruth"), { units: ["north", "south"] })).findings)).toEqual(["not-a-code 2 Unit"]);
  expect((await load(text("unit-1"))).rows.person[0]?.unit).toBe("unit-1");
});

test.each(Object.entries(templateNames))("every header of the template of %s means its own field", (name, tableName) => {
  const text = templateCsv(name as keyof typeof templateNames).trim();
  const { columns } = matchSheet(sheetOf(`${text}\n${"x,".repeat(text.split(",").length - 1)}x`));
  const fields = columns.map(({ target }) => target?.field);
  const wanted = fieldsOf(tableName)
    .filter(([, { madeByStrip }]) => !madeByStrip)
    .map(([id]) => id);
  expect(fields).toEqual(expect.arrayContaining([...wanted, "localId"]));
  expect(columns.filter(({ target, sharedWith }) => target === null || sharedWith.length > 0).map(({ header }) => header)).toEqual([]);
});

test("the one-sheet template holds persons, segments, heights and complications, each header its own field", () => {
  const text = templateCsv("one-sheet").trim();
  const { kind, columns } = matchSheet(sheetOf(`${text}\n${"x,".repeat(text.split(",").length - 1)}x`));
  expect(kind).toBe("one-sheet");
  expect(columns.filter(({ target, sharedWith }) => target === null || sharedWith.length > 0).map(({ header }) => header)).toEqual([]);
  const ids = columns.flatMap(({ target }) => (target ? [targetId(target)] : []));
  const own = (["person", "segment"] as const).flatMap((name) =>
    fieldsOf(name)
      .filter(([, { madeByStrip }]) => !madeByStrip)
      .map(([id]) => id),
  );
  expect(ids).toEqual(expect.arrayContaining([...own, "statureMm.before", "statureMm.final", "eventType.1", "onsetDay.3", "handling.2"]));
});

test("headers of templates are the snake case of ids", () => {
  const headers = new Set(templateCsv("one-sheet").trim().split(","));
  for (const [id, { madeByStrip }] of fieldsOf("segment").filter(([id]) => id !== "person"))
    expect([id, headers.has(snake(id))]).toEqual([id, !madeByStrip]);
  expect(tableNames.length).toBe(Object.keys(templateNames).length);
});

test("events in numbered columns, without a column of surgeries, belong to the segment known", async () => {
  const numbered = table({
    MRN: ["A1", "A2", "A9"],
    Bone: ["Femur", "Tibia", "Tibia"],
    Side: ["R", "L", "L"],
    "Complication 1": ["Knee stiffness", "none", "DVT"],
    "Complication 1 date": ["14/04/2024", "", ""],
  });
  for (const texts of [
    [numbered, segments],
    [segments, numbered],
  ]) {
    const { rows, findings } = await load(texts);
    const right = rows.segment.find(({ side }) => side === "right");
    expect(rows.event).toHaveLength(1);
    expect(rows.event[0]).toMatchObject({ eventType: "stiffness", side: "right", surgeryDay: right?.surgeryDay });
    expect(right).toMatchObject({ surgeryYear: 2024, surgeryQuarter: 1, eventsLookedFor: "fully" });
    expect(saidOf(findings)).toEqual(["which-segment 4"]);
  }
  const held = (await load(segments)).rows;
  const alone = await load(numbered, { held });
  expect(alone.counts.fresh).toMatchObject({ segment: 0, event: 1 });
  expect(alone.counts.changed).toMatchObject({ segment: 2 });
  const undated = (await load(table({ MRN: "A1", Bone: "Femur", Side: "R", Year: "2021", Episode: "2" }))).rows;
  const days = table({ MRN: "A1", Bone: "Femur", Side: "R", "Complication 1": "Knee stiffness", "Complication 1 date (days)": "60" });
  const { rows } = await load(days, { held: undated });
  expect(rows.segment[0]).toMatchObject({ surgeryYear: 2021, surgeryDay: 20210002 });
  expect(rows.event[0]?.onsetDay).toBe(20210062);
});

test("visits, events and body measures of a file without dates count days from their segment", async () => {
  const file = table({ "Study ID": "7", Bone: "Femur", Side: "L", Year: "2021", Age: "14.2", "Time to union (days)": "240" });
  const visit = table({ "Study ID": "7", Bone: "Femur", Side: "L", "Visit (days)": "90", Cortices: "2" });
  const event = table({ "Study ID": "7", Bone: "Femur", Side: "L", Complication: "Knee stiffness", "Onset (weeks)": "4" });
  const { rows, findings } = await load([visit, event, file]);
  expect(rows.visit[0]).toMatchObject({ visitDay: 20210091, surgeryDay: 20210001 });
  expect(rows.event[0]?.onsetDay).toBe(20210029);
  expect(rows.person).toHaveLength(1);
  expect(rows.person[0]?.line).toBe("undated");
  expect(saidOf(findings)).toEqual([]);
});
