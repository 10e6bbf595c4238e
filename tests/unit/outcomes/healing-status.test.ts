import { describe, expect, test } from "vitest";
import { courseOf, healingStatus } from "@/lib/outcomes";
import { aSegment, aVisit } from "./a-segment";

describe("healing status, the first that applies", () => {
  test.each([
    ["a consolidation day", { consolidationDay: 180, endState: "abandoned" as const }, "healed"],
    ["no end of distraction, seen on day 100", { distractionEndDay: null, lastFilmDay: 100, lastFollowUpDay: 100 }, "still-distracting"],
    ["the same with an interim gain", { distractionEndDay: null, lastFilmDay: 100, gainMm: 30 }, "still-distracting"],
    ["no end of distraction and seen 241 days after its start", { distractionEndDay: null, lastFilmDay: 248 }, "not-healed-at-last-film"],
    ["seen exactly 240 days after its start", { distractionEndDay: null, lastFilmDay: 247 }, "still-distracting"],
    [
      "no end of distraction but full weight bearing",
      { distractionEndDay: null, lastFilmDay: 100, fullWeightBearingDay: 90 },
      "not-healed-at-last-film",
    ],
    ["a rescue", { rescueDay: 200, lastFilmDay: 300 }, "rescued"],
    ["a rescue and an end that was abandoned", { rescueDay: 200, endState: "abandoned" as const }, "rescued"],
    ["amputation", { endState: "amputated" as const, lastFilmDay: 300 }, "ended-unhealed"],
    ["taken out for infection", { implantOutReason: "infection" as const, implantRemovalDay: 200, lastFilmDay: 200 }, "ended-unhealed"],
    ["death", { died: true, lastFilmDay: 100 }, "ended-unhealed"],
    [
      "a planned removal after the last film",
      { implantOutReason: "planned" as const, implantRemovalDay: 400, lastFilmDay: 100 },
      "healing-date-missing",
    ],
    ["seen 91 days after the last film", { lastFilmDay: 100, lastFollowUpDay: 191 }, "healing-date-missing"],
    ["seen 90 days after the last film", { lastFilmDay: 100, lastFollowUpDay: 190 }, "not-healed-at-last-film"],
    ["no film day at all", {}, "healing-date-missing"],
    ["a removal day alone, on the day of the last film", { implantRemovalDay: 100, lastFilmDay: 100 }, "not-healed-at-last-film"],
  ])("%s", (_, recorded, status) => {
    expect(healingStatus(aSegment(recorded))).toBe(status);
  });
});

describe("days that a visit series gives", () => {
  const visits = [
    aVisit(60, { distractedMm: 50, cortices: 0 }),
    aVisit(30, { distractedMm: 25, cortices: 0 }),
    aVisit(120, { distractedMm: null, cortices: 2 }),
    aVisit(170, { distractedMm: null, cortices: 3 }),
    aVisit(220, { distractedMm: null, cortices: 4 }),
  ];

  test("consolidation is the first visit with three cortices, and is marked derived", () => {
    const course = courseOf(aSegment({ visits }));
    expect(course).toMatchObject({
      consolidationDay: 170,
      lastNotHealedDay: 120,
      lastFilmDay: 220,
      derived: { consolidation: true, distractionEnd: false },
    });
    expect(healingStatus(aSegment({ visits }))).toBe("healed");
  });

  test("a recorded day stands before a derived one", () => {
    expect(courseOf(aSegment({ visits, consolidationDay: 160 }))).toMatchObject({
      consolidationDay: 160,
      derived: { consolidation: false },
    });
  });

  test("distraction ends at the first visit with the planned length", () => {
    expect(courseOf(aSegment({ visits, distractionEndDay: null })).distractionEndDay).toBe(60);
  });

  test("a length that is still growing at the last visit is no end", () => {
    const growing = [aVisit(30, { distractedMm: 20, cortices: null }), aVisit(45, { distractedMm: 32, cortices: null })];
    expect(courseOf(aSegment({ visits: growing, distractionEndDay: null })).distractionEndDay).toBeNull();
  });

  test("a length short of the plan that a later visit shows again is the end", () => {
    const stopped = [aVisit(45, { distractedMm: 32, cortices: null }), aVisit(60, { distractedMm: 32, cortices: null })];
    expect(courseOf(aSegment({ visits: stopped, distractionEndDay: null })).distractionEndDay).toBe(45);
  });
});
