import { describe, expect, test } from "vitest";
import { casebook, casebookColumns, casebookLists, cohort, healing, today } from "@/lib/answers";
import { demoRegistry } from "../demo-registry";
import { at, fresh } from "../registry/folder";
import { anEvent, aPerson, aSegment, aVisit, personKey, rowsOf } from "../registry/rows";

// Invented rows. Three persons: the first with two segments and visits, the second without a surgeon, the third undated.
const surgeon = (letter: string) => letter.repeat(26);
const rows = rowsOf({
  person: [
    aPerson(1, { sex: "female", diabetes: true, followUpStatus: "lost", followUpStatusDay: 1100 }),
    aPerson(2, { sex: "male", permittedUse: "audit-only" }),
    aPerson(3, { line: "undated" }),
  ],
  segment: [
    aSegment(1, {
      device: "magnetic-nail",
      surgeon: surgeon("B"),
      surgeryQuarter: 1,
      gainMm: 50,
      consolidationDay: 1150,
      lastFilmDay: 1160,
      eventsLookedFor: "fully",
    }),
    aSegment(1, { bone: "tibia", side: "right", surgeon: surgeon("A"), gainMm: 30, distractionStartDay: 1005, distractionEndDay: 1040 }),
    aSegment(2, { surgeryYear: 2025, surgeryQuarter: 4, surgeryDay: 3000, device: "circular-fixator" }),
    aSegment(3, { surgeryYear: 2021, surgeryDay: 20_210_001, consolidationDay: 20_210_201, gainMm: 40, device: "magnetic-nail" }),
  ],
  visit: [aVisit(1, 1030, { cortices: 1 }), aVisit(1, 1160, { cortices: 4 })],
  event: [anEvent(1, { bone: "femur", side: "left", surgeryDay: 1000, onsetDay: 1020 })],
});
const atEnd2025 = "2025-12-31T10:00:00Z";

async function filled() {
  const registry = await fresh();
  await registry.commit(rows, { at: atEnd2025 });
  return registry;
}

describe("a row a segment", () => {
  test("by case, with days from that segment's own surgery", async () => {
    const answer = await casebook(await filled(), {
      columns: ["bone", "daysToConsolidation", "lastFilm", "corticesAtLastFilm", "visits", "events"],
    });
    expect(answer.rows.map(({ case: number, values }) => [number, ...Object.values(values)])).toEqual([
      [1, "femur", 150, 160, 4, 2, 1],
      [1, "tibia", null, null, null, 0, 0],
      [2, "femur", null, null, null, 0, 0],
      [3, "femur", 200, null, null, 0, 0],
    ]);
    expect(answer).toMatchObject({ segments: 4, cases: 3, held: 4, from: 0, batch: 1, dataTo: "2025 Q4" });
  });

  test("surgeons go by S1, S2 in the order of the registry, whatever their pseudonyms", async () => {
    const { rows: told } = await casebook(await filled(), { columns: ["surgeon"] });
    expect(told.map(({ values }) => values.surgeon)).toEqual(["S1", "S2", null, null]);
  });

  test("days of the person are counted from each segment's surgery", async () => {
    const { rows: told } = await casebook(await filled(), { columns: ["daysToFollowUpStatus"] });
    expect(told.map(({ values }) => values.daysToFollowUpStatus)).toEqual([100, 100, null, null]);
  });

  test("no column gives a pseudonym or a day of the person's line", async () => {
    const registry = await filled();
    const text = JSON.stringify((await casebook(registry, { columns: casebookColumns.map(({ id }) => id) })).rows);
    for (const n of [1, 2, 3]) expect(text).not.toContain(personKey(n));
    for (const letter of ["A", "B"]) expect(text).not.toContain(surgeon(letter));
    for (const day of [1000, 1150, 1160, 3000, 20_210_001, 20_210_201]) expect(text).not.toContain(String(day));
  });
});

describe("search", () => {
  test.each([
    ["", [1, 1, 2, 3]],
    ["1", [1, 1]],
    ["2025", [2]],
    ["S2", [1]],
    ["magnetic", [1, 3]],
    ["nail magnetic", [1, 3]],
    ["FEMUR left", [1, 2, 3]],
    ["tib", [1]],
    ["female", [1, 1]],
    ["diabetes", [1, 1]],
    ["femur 2021 healed", [3]],
    ["magnetic tibia", []],
  ])("%o finds cases %o", async (search, expected) => {
    const answer = await casebook(await filled(), { search });
    expect(answer.rows.map(({ case: number }) => number)).toEqual(expected);
  });
});

test.each(["Quellthorpe", "femur Quellthorpe", "ibia", "0187741", "4711", "<script>", "S0", "01"])(
  "a search for %o, which can stand in no case, is refused and not repeated",
  async (search) => {
    const refusal = await casebook(await filled(), { search }).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(RangeError);
    expect(String(refusal)).not.toContain(search);
  },
);

describe("lists", () => {
  const casesOn = async (list: string) =>
    (await casebook(await filled(), { list })).rows.map(({ case: number, values }) => [number, values.bone]);

  test("no consolidation day though 12 months are past, up to the last file", async () => {
    // case 2 was operated on in the last quarter of 2025, and the file came at its end
    expect(await casesOn("not-healed-at-12-months")).toEqual([[1, "tibia"]]);
  });
  test("a film at six months is missing of what could have been filmed, not of the lost", async () => {
    expect(await casesOn("film-missing-6-months")).toEqual([]);
    const registry = await fresh();
    await registry.commit({ ...rows, person: [aPerson(1), ...rows.person.slice(1)] }, { at: atEnd2025 });
    // 160 days lie in the window of the femur; the undated femur was last filmed at 200 days, in the window too
    const { rows: missing } = await casebook(registry, { list: "film-missing-6-months" });
    expect(missing.map(({ case: number, values }) => [number, values.bone])).toEqual([[1, "tibia"]]);
  });
  test("events not collected, blank among them", async () => {
    expect(await casesOn("events-not-collected")).toEqual([
      [1, "tibia"],
      [2, "femur"],
      [3, "femur"],
    ]);
  });
  test("permitted use not recorded", async () => {
    expect(await casesOn("permitted-use-not-recorded")).toEqual([
      [1, "femur"],
      [1, "tibia"],
      [3, "femur"],
    ]);
  });
  test("every list can be asked, and any other is refused", async () => {
    const registry = await filled();
    for (const { id } of casebookLists) expect((await casebook(registry, { list: id })).segments).toBeLessThanOrEqual(4);
    await expect(casebook(registry, { list: "others" })).rejects.toThrow("casebook requires a list among");
  });
});

describe("order", () => {
  test("numbers by size, codes by the codebook, blanks last either way", async () => {
    const registry = await filled();
    const order = async (sort: string, descending: boolean) =>
      (await casebook(registry, { sort, descending })).rows.map(({ segment }) => segment);
    expect(await order("gainMm", false)).toEqual([2, 4, 1, 3]);
    expect(await order("gainMm", true)).toEqual([1, 4, 2, 3]);
    expect(await order("device", false)).toEqual([1, 4, 3, 2]);
    expect(await order("case", true)).toEqual([4, 3, 2, 1]);
  });
  test("a window of any size, put after the last, gives all rows once", async () => {
    const registry = await filled();
    for (const limit of [1, 2, 3, 5]) {
      const seen: number[] = [];
      for (let from = 0; from < 4; from += limit)
        seen.push(...(await casebook(registry, { from, limit })).rows.map(({ segment }) => segment));
      expect(seen).toEqual([1, 2, 3, 4]);
    }
    expect((await casebook(registry, { from: 99, limit: 2 })).rows).toEqual([]);
  });
  test.each([{ columns: ["person"] }, { sort: "surgeryDay" }, { columns: ["consolidationDay"] }])("%o is refused", async (asked) => {
    await expect(casebook(await filled(), asked)).rejects.toThrow("casebook requires");
  });
});

test("as of an earlier batch, what was held then", async () => {
  const registry = await filled();
  await registry.commit(rowsOf({ segment: [aSegment(1, { gainMm: 55 })] }), { at });
  const gains = async (asOf?: number) =>
    (await casebook(registry, { columns: ["gainMm"], ...(asOf ? { asOf } : {}) })).rows.map(({ values }) => values.gainMm);
  expect(await gains()).toEqual([55, 30, null, 40]);
  expect(await gains(1)).toEqual([50, 30, null, 40]);
  expect((await casebook(await fresh())).held).toBe(0);
});

describe("on the invented unit's seven years, the casebook agrees with the other answers", () => {
  test("cohorts, healing statuses and indices", async () => {
    await using registry = await demoRegistry();
    const where = { bone: ["femur"], gainMm: { from: 40 } };
    const [book, who] = [await casebook(registry, { where }), await cohort(registry, { where })];
    expect([book.segments, book.cases]).toEqual([who.segments, who.patients]);

    const all = await casebook(registry, { columns: ["healingStatus", "surgery-to-consolidation"] });
    const { statuses, segments, patients } = await today(registry);
    expect([all.segments, all.cases]).toEqual([segments, patients]);
    for (const { status, segments: n } of statuses)
      expect(all.rows.filter(({ values }) => values.healingStatus === status)).toHaveLength(n);

    const { groups } = await healing(registry, { measure: "surgery-to-consolidation", by: ["bone"] });
    const healed = new Map(
      groups.flatMap(({ marks }) => marks.filter(({ status }) => status === "healed").map((mark) => [mark.segment, mark.value])),
    );
    const inBook = new Map(
      all.rows.flatMap(({ segment, values }) =>
        values["surgery-to-consolidation"] === null ? [] : [[segment, values["surgery-to-consolidation"]]],
      ),
    );
    expect(healed.size).toBeGreaterThan(300);
    expect(inBook).toEqual(healed);
  });
});
