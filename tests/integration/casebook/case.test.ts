import { describe, expect, test } from "vitest";
import { casebook, casebookKeys, caseOf, correctCase } from "@/lib/answers";
import { at, freshWithLists } from "../registry/folder";
import { anEvent, aPerson, aSegment, aVisit, personKey, row, rowsOf } from "../registry/rows";

// One invented person: a femur that was rescued and healed, and later a tibia that is still being lengthened.
const femur = aSegment(1, {
  device: "circular-fixator",
  distractionStartDay: 1007,
  distractionEndDay: 1057,
  consolidationDay: 1400,
  fixatorRemovalDay: 1410,
  prescribedRateMmPerDay: 1,
  prescribedStepsPerDay: 4,
  plannedGainMm: 50,
  gainMm: 48,
  boneLengthBeforeMm: 400,
  eventsLookedFor: "fully",
});
const tibia = { bone: "tibia", side: "right", surgeryDay: 2000 } as const;
const rows = rowsOf({
  person: [aPerson(1, { sex: "male", followUpStatus: "under-review", followUpStatusDay: 2100 })],
  bodyMeasure: [
    row("bodyMeasure", { person: personKey(1), bodyDay: 990, occasion: "before", femurLeftMm: 401, femurRightMm: 450, statureMm: 1700 }),
    row("bodyMeasure", { person: personKey(1), bodyDay: 1500, occasion: "final", femurRightMm: 450, statureMm: 1702 }),
  ],
  segment: [femur, aSegment(1, { ...tibia, surgeryYear: 2023, distractionStartDay: 2010, lastFilmDay: 2040 })],
  visit: [
    aVisit(1, 1020, { distractedMm: 13, distractedBy: "film", cortices: 0 }),
    aVisit(1, 1040, { distractedMm: 33, distractedBy: "dial" }),
    aVisit(1, 1200, { cortices: 1 }),
    aVisit(1, 2040, { ...tibia, distractedMm: 20, cortices: 0 }),
  ],
  event: [
    anEvent(1, {
      bone: "femur",
      side: "left",
      surgeryDay: 1000,
      onsetDay: 1200,
      handling: "operation-under-anaesthesia",
      purpose: "regenerate-healing",
      resolved: true,
    }),
    anEvent(1, { bone: "femur", side: "left", surgeryDay: 1000, onsetDay: 1410, handling: "operation-under-anaesthesia", planned: true }),
    anEvent(1, { eventType: "deep-vein-thrombosis", onsetDay: 1003 }),
  ],
  score: [row("score", { person: personKey(1), scoreCode: "a-score", scoreDay: 990, scoreValue: 61.5 })],
});

async function filled() {
  const registry = await freshWithLists();
  await registry.commit(rows, { at });
  return registry;
}

test("a case's segments, each on its own clock", async () => {
  const answer = await caseOf(await filled(), 1);
  expect(answer?.segments.map(({ bone, side, daysAfterFirst, status }) => [bone, side, daysAfterFirst, status])).toEqual([
    ["femur", "left", 0, "healed"],
    ["tibia", "right", 1000, "still-distracting"],
  ]);
  expect(answer?.segments[0]).toMatchObject({
    healing: { consolidation: 400, consolidationDerived: false, distractionEnd: 57, lastFilm: 200, lastSeen: null },
    phases: [
      { phase: "latency", from: 0, to: 7, open: false },
      { phase: "distraction", from: 7, to: 57, open: false },
      { phase: "consolidation", from: 57, to: 200, open: false },
      { phase: "rescue", from: 200, to: 400, open: false },
    ],
    course: {
      points: [
        { day: 20, mm: 13, by: "film" },
        { day: 40, mm: 33, by: "dial" },
      ],
      // 50 mm planned at 1 mm a day from day 7
      prescribed: [
        { day: 7, mm: 0 },
        { day: 57, mm: 50 },
      ],
      gained: { day: 57, mm: 48 },
    },
  });
  // (1400 − 1000) days over 4.8 cm
  expect(answer?.segments[0]?.surgeryToConsolidationDaysPerCm).toBeCloseTo(400 / 4.8, 12);
  expect(answer?.segments[1]?.phases).toEqual([
    { phase: "latency", from: 0, to: 10, open: false },
    { phase: "distraction", from: 10, to: 40, open: true },
  ]);
});

test("events with what each scheme makes of them; a planned operation has no class", async () => {
  const answer = await caseOf(await filled(), 1);
  const [first, second] = answer?.segments[0]?.events ?? [];
  expect(first).toMatchObject({
    type: "stiffness",
    origin: "joint",
    day: 200,
    phase: "consolidation",
    phaseDerived: true,
    complication: true,
  });
  expect(first?.classes).toContainEqual({ scheme: "problem-obstacle", class: "obstacle" });
  expect(first?.classes).toContainEqual({ scheme: "three-level", class: "serious" });
  expect(second).toMatchObject({ day: 410, complication: false, classes: [] });
  expect(answer?.events).toMatchObject([{ type: "deep-vein-thrombosis", day: 3 }]);
});

test("lengths before and after, each saying where it comes from", async () => {
  const { body } = (await caseOf(await filled(), 1)) ?? {};
  expect(body?.bones).toEqual([
    // measured before; after from the segment: its length before and its gain
    { bone: "femur", side: "left", before: { lengthMm: 401, source: "measured" }, after: { lengthMm: 448, source: "derived" } },
    { bone: "femur", side: "right", before: { lengthMm: 450, source: "measured" }, after: { lengthMm: 450, source: "measured" } },
  ]);
  expect(body?.measuredStatureGainMm).toEqual({ measured: true, value: 2 });
  expect(body?.measures.map(({ occasion, day }) => [occasion, day])).toEqual([
    ["before", -10],
    ["final", 500],
  ]);
});

test("which batch changed which field, from what to what, days from the segment's surgery", async () => {
  const registry = await filled();
  await registry.commit(
    rowsOf({ segment: [aSegment(1, { gainMm: 47, consolidationDay: 1390 })], visit: [aVisit(1, 1300, { cortices: 2 })] }),
    { at },
  );
  await registry.undo(3, { at });
  const { history } = (await caseOf(registry, 1)) ?? {};
  expect(history?.map(({ batch, kind, undoes, changes }) => [batch, kind, undoes, changes.map(({ what }) => what).join(" ")])).toEqual([
    [2, "intake", null, Array.from({ length: 13 }, () => "new").join(" ")],
    [3, "intake", null, "changed new"],
    [4, "undo", 3, "changed gone"],
  ]);
  const changed = history?.[1]?.changes[0];
  expect(changed).toMatchObject({ table: "segment", of: { bone: "femur", side: "left" } });
  expect(changed?.fields.map(({ field, before, after }) => [field, before, after])).toEqual([
    ["consolidationDay", 400, 390],
    ["gainMm", 48, 47],
  ]);
  expect(history?.[2]?.changes[0]?.fields.map(({ field, before, after }) => [field, before, after])).toEqual([
    ["consolidationDay", 390, 400],
    ["gainMm", 47, 48],
  ]);
  expect(history?.[2]?.changes[1]).toMatchObject({ table: "visit", what: "gone", of: { day: 300 } });
});

test("as of an earlier batch it is what it was; before it came, and of nobody, there is no case", async () => {
  const registry = await filled();
  await registry.commit(rowsOf({ person: [aPerson(2)], segment: [aSegment(1, { gainMm: 47 })] }), { at });
  expect((await caseOf(registry, 1, { asOf: 2 }))?.segments[0]?.course.gained?.mm).toBe(48);
  expect((await caseOf(registry, 1))?.segments[0]?.course.gained?.mm).toBe(47);
  expect((await caseOf(registry, 1, { asOf: 2 }))?.history).toHaveLength(1);
  expect(await caseOf(registry, 2, { asOf: 2 })).toBeNull();
  expect(await caseOf(registry, 3)).toBeNull();
  await expect(caseOf(registry, 1, { asOf: 4 })).rejects.toThrow("an answer requires a batch from 0 to 3, received 4");
});

test("neither a pseudonym nor a day of the person's line is told", async () => {
  const registry = await filled();
  await registry.commit(rowsOf({ segment: [aSegment(1, { surgeon: "Q".repeat(26), consolidationDay: 1391 })] }), { at });
  const text = JSON.stringify(await caseOf(registry, 1));
  expect(text).not.toContain(personKey(1));
  expect(text).not.toContain("QQQ");
  for (const day of [1007, 1057, 1391, 1400, 1410, 2010, 2040, 990]) expect(text).not.toMatch(new RegExp(`[:,\\[]${day}\\b`));
});

describe("a person whose days came without dates", () => {
  const undated = (episode: number, fields: object) => aSegment(1, { surgeryDay: 20_210_000 + episode, surgeryYear: 2021, ...fields });
  test("no distance between two operations is told, nor days of what belongs to the person", async () => {
    const registry = await freshWithLists();
    const score = row("score", { person: personKey(1), scoreCode: "a-score", scoreDay: 20_210_101, scoreValue: 5 });
    await registry.commit(
      rowsOf({
        person: [aPerson(1, { line: "undated" })],
        segment: [undated(1, { consolidationDay: 20_210_191 }), undated(2, { side: "right" })],
        score: [score],
      }),
      { at },
    );
    const answer = await caseOf(registry, 1);
    expect(answer?.segments.map(({ daysAfterFirst, healing }) => [daysAfterFirst, healing.consolidation])).toEqual([
      [null, 190],
      [null, null],
    ]);
    expect(answer?.scores).toEqual([{ score: 1, code: "a-score", day: null, value: 5 }]);
  });
});

describe("a correction by hand", () => {
  const asked = { case: 1, table: "segment", entity: 1, reason: "typing-error", at } as const;
  test("is typed in days from surgery, and told with what the sheet says", async () => {
    const registry = await filled();
    await correctCase(registry, { ...asked, field: "consolidationDay", typed: "395" });
    const answer = await caseOf(registry, 1);
    expect(answer?.segments[0]?.healing.consolidation).toBe(395);
    expect(answer?.corrections).toMatchObject([
      { table: "segment", entity: 1, field: "consolidationDay", kind: "days", sheet: 400, value: 395, reason: "typing-error", since: 3 },
    ]);
    expect(answer?.history.at(-1)).toMatchObject({ batch: 3, kind: "correction", reason: "typing-error", changes: [{ what: "changed" }] });
  });
  test.each([
    ["gainMm", "47,5", 47.5],
    ["gainMm", " 47.5 ", 47.5],
    ["axisDeviationBeforeMm", "−12", -12],
    ["device", "hexapod-circular-fixator", "hexapod-circular-fixator"],
    ["canalVented", "no", false],
    ["gainMm", "", null],
  ])("%s typed as %o", async (field, typed, value) => {
    const registry = await filled();
    await correctCase(registry, { ...asked, field, typed });
    const row2 = (await registry.rowsOf(1)).find(({ table, entity }) => table === "segment" && entity === 1)?.row;
    expect(row2).toMatchObject({ [field]: value });
  });
  test.each([
    ["gainMm", "about 48", "Type a number of mm."],
    ["consolidationDay", "12/03/2024", "Type a whole number of days from surgery."],
    ["consolidationDay", "10.5", "Type a whole number of days from surgery."],
    ["canalVented", "maybe", "Choose one of yes, no."],
    ["bone", "tibia", "correctCase requires a field"],
  ])("%s typed as %o is refused in words", async (field, typed, words) => {
    await expect(correctCase(await filled(), { ...asked, field, typed })).rejects.toThrow(words);
  });
  test("of another case's row is refused", async () => {
    const registry = await filled();
    await registry.commit(rowsOf({ person: [aPerson(2)] }), { at });
    await expect(correctCase(registry, { ...asked, case: 2, field: "gainMm", typed: "1" })).rejects.toThrow("a row of the case");
    await expect(correctCase(registry, { ...asked, case: 9, field: "gainMm", typed: "1" })).rejects.toThrow("a row of the case");
  });
});

describe("a patient with two numbers", () => {
  const days = 40;
  async function joined() {
    const registry = await filled();
    const second = rowsOf({
      person: [aPerson(2, { smoking: "never" })],
      segment: [aSegment(2, { bone: "femur", side: "right", surgeryDay: 1100 - days, gainMm: 30 })],
      visit: [{ ...aVisit(2, 1020 - days, { cortices: 1 }), surgeryDay: 1000 - days }],
    });
    await registry.commit(second, { at });
    await registry.join({ person: 2, into: 1, days, at });
    return registry;
  }
  test("is one case, with all segments on one clock and the join in its history", async () => {
    const answer = await caseOf(await joined(), 1);
    expect(answer?.segments.map(({ bone, side, daysAfterFirst, visits }) => [bone, side, daysAfterFirst, visits.length])).toEqual([
      ["femur", "left", 0, 3],
      ["femur", "right", 100, 0],
      ["tibia", "right", 1000, 1],
    ]);
    // the visit of day 20 was said under both numbers
    expect(answer?.segments[0]?.visits[0]).toMatchObject({ day: 20, cortices: 1 });
    expect(answer?.recorded.find(({ field }) => field === "smoking")?.value).toBe("never");
    expect(answer?.joined).toEqual([2]);
    expect(answer?.history.map(({ batch, kind, joined: numbers }) => [batch, kind, numbers])).toEqual([
      [2, "intake", []],
      [3, "intake", []],
      [4, "join", [2]],
    ]);
  });
  test("its second number has no case; the table and the keys know it as the first", async () => {
    const registry = await joined();
    expect(await caseOf(registry, 2)).toBeNull();
    expect((await casebook(registry)).rows.map(({ case: number }) => number)).toEqual([1, 1, 1]);
    expect((await casebookKeys(registry, {})).keys).toEqual([
      [1, personKey(1), 1],
      [1, personKey(2), 2],
    ]);
    expect((await caseOf(registry, 2, { asOf: 3 }))?.segments).toHaveLength(1);
  });
});
