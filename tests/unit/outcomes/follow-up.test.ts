import { describe, expect, test } from "vitest";
import { followUpCompleteness, followUpWindows, motionLossAt, motionOf, windowStatus } from "@/lib/outcomes";

/**
 * The 100 persons of figure 1 in Xue et al., BMC Med Res Methodol 2017;17:155 (doi 10.1186/s12874-017-0436-z): three yearly visits,
 * events 10, 5 and 5 in the years, 40 drop-outs in year 1 (A) or in year 3 (B), all in the middle of a year.
 */
function published(dropOutYear: 1 | 3) {
  const events = [10, 5, 5].flatMap((n, year) => Array.from({ length: n }, () => ({ observed: year + 0.5, potential: 3, event: true })));
  const dropOuts = Array.from({ length: 40 }, () => ({ observed: dropOutYear - 0.5, potential: 3, event: false }));
  const whole = Array.from({ length: 40 }, () => ({ observed: 3, potential: 3, event: false }));
  return [...events, ...dropOuts, ...whole];
}

describe("completeness of follow-up", () => {
  test.each([
    [1, 165, 62.26],
    [3, 245, 92.45],
  ] as const)("drop-outs in year %i: observed %d of 265 person-years", (year, observed, percent) => {
    const completeness = followUpCompleteness(published(year));
    expect(completeness).toMatchObject({ observed, potential: 265 });
    expect(completeness.share * 100).toBeCloseTo(percent, 2);
  });

  test("no drop-outs: complete, whatever the events", () => {
    expect(followUpCompleteness(published(1).filter((one) => one.event || one.observed === 3)).share).toBe(1);
  });

  test("nobody to follow is an error", () => {
    expect(() => followUpCompleteness([])).toThrow("followUpCompleteness requires potential follow-up above zero, received 0");
  });
});

describe("a window", () => {
  const window = followUpWindows[2];
  const followed = { seenOn: [], potentialDays: 1000, diedOn: null, lostOn: null };
  test.each([
    ["seen", { seenOn: [274] }],
    ["due", { seenOn: [273, 457] }],
    ["not-yet-due", { potentialDays: 455 }],
    ["dead", { diedOn: 300 }],
    ["lost", { lostOn: 100 }],
  ])("%s", (status, known) => {
    expect(windowStatus({ ...followed, ...known }, window)).toBe(status);
  });
});

describe("motion", () => {
  const at = (visitDay: number, kneeFlexionDeg: number | null) => ({
    visitDay,
    kneeFlexionDeg,
    kneeExtensionDeg: null,
    ankleDorsiflexionDeg: null,
    hipFlexionDeg: null,
  });
  const visits = [at(-5, 140), at(60, 70), at(180, 110), at(400, 130)];

  test.each([
    ["lost", 70],
    ["regained", 60],
    ["final", 130],
  ] as const)("%s %d degrees", (moment, value) => {
    expect(motionOf(visits, 0, "kneeFlexionDeg", moment)).toEqual({ measured: true, value });
  });

  test("at a window the nearest visit counts, and none is carried forward", () => {
    expect(motionLossAt(visits, 0, "kneeFlexionDeg", { from: 141, to: 225 })).toEqual({ measured: true, value: 30 });
    expect(motionLossAt(visits, 0, "kneeFlexionDeg", { from: 600, to: 900 })).toEqual({ measured: false, because: "no-visits" });
  });

  test("without a baseline nothing was lost that could be told", () => {
    expect(motionOf(visits.slice(1), 0, "kneeFlexionDeg", "lost")).toEqual({ measured: false, because: "not-recorded" });
    expect(motionOf([], 0, "kneeFlexionDeg", "final")).toEqual({ measured: false, because: "no-visits" });
  });
});
