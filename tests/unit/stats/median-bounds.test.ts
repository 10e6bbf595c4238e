import fc, { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { kaplanMeier } from "../../../lib/stats/kaplan-meier";
import { medianBounds } from "../../../lib/stats/median-bounds";

// Worked by hand from the definition: each unhealed bone (0) heals on its last film, or never.
describe("by hand", () => {
  test.each([
    // sorted last-film values 10 20 30: middle 20; never: 10 30 ∞: 30
    [
      [10, 20, 30],
      [1, 0, 1],
      [20, 30],
    ],
    // 10 20 30 40: 25; never: 10 30 40 ∞: 35; estimate: 3/4, then 3/8 at 30
    [
      [10, 20, 30, 40],
      [1, 0, 1, 1],
      [25, 35],
    ],
    // never: 10 20 ∞ ∞, a middle value is never; low would be 25, but the curve is flat at one half from 20 on: estimate 20
    [
      [10, 20, 30, 40],
      [1, 1, 0, 0],
      [20, null],
    ],
    // odd, the middle one never
    [
      [10, 20, 30],
      [1, 0, 0],
      [20, null],
    ],
    // every bone healed: both are the ordinary median
    [
      [10, 20, 30, 40],
      [1, 1, 1, 1],
      [25, 25],
    ],
    // nobody healed: the estimate is not reached and the low side stands
    [
      [10, 20, 30],
      [0, 0, 0],
      [20, null],
    ],
    [[7], [1], [7, 7]],
    [[7], [0], [7, null]],
    [
      [10, 20],
      [1, 0],
      [10, null],
    ],
  ])("times %j, healed %j: %j", (times, event, bounds) => {
    expect(medianBounds({ times, event }).bounds).toEqual(bounds);
  });
});

const rows = fc.array(fc.record({ time: fc.integer({ min: 1, max: 60 }), event: fc.integer({ min: 0, max: 1 }) }), {
  minLength: 1,
  maxLength: 30,
});

test("whatever the unhealed did, the ordinary median lies between the bounds, and so does the estimate", () => {
  assert(
    property(rows, fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 30, maxLength: 30 }), (data, later) => {
      const input = { times: data.map((d) => d.time), event: data.map((d) => d.event) };
      const { bounds, estimate } = medianBounds(input);
      const truth = data.map((d, i) => (d.event ? d.time : d.time + (later[i] as number))).sort((a, b) => a - b);
      const half = truth.length / 2;
      const median = ((truth[Math.ceil(half) - 1] as number) + (truth[Math.floor(half)] as number)) / 2;
      expect(bounds[0]).toBeLessThanOrEqual(median);
      if (bounds[1] !== null) expect(bounds[1]).toBeGreaterThanOrEqual(median);
      if (estimate !== null) expect(bounds[0]).toBeLessThanOrEqual(estimate);
      if (estimate !== null && bounds[1] !== null) expect(bounds[1]).toBeGreaterThanOrEqual(estimate);
    }),
  );
});

describe("record", () => {
  const input = { times: [10, 20, 30, 40, 50], event: [1, 1, 0, 1, 1], patient: ["a", "a", "b", "c", "d"] };
  test("estimate and limits are the curve's", () => {
    const { estimate, lower, upper, patients } = kaplanMeier({ ...input, confidence: 0.9 });
    expect(medianBounds({ ...input, confidence: 0.9 })).toMatchObject({ estimate, lower, upper, patients, healed: 4, unhealed: 1, n: 5 });
  });
  test("above a tenth unhealed the note says so, at a tenth it doesn't", () => {
    expect(medianBounds(input).notes).toEqual([{ code: "heavily-censored", censored: 1, n: 5 }]);
    const ten = { times: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10], event: [1, 1, 1, 1, 1, 1, 1, 1, 1, 0] };
    expect(medianBounds(ten).notes).toEqual([]);
  });
});

test.each([
  [{ times: [], event: [] }, "medianBounds requires at least one row, received 0"],
  [{ times: [1], event: [2] }, "medianBounds requires event codes from 0 to 1, received 2 at 0"],
  [{ times: [1], event: [1], entry: [0] }, "medianBounds requires rows under observation from the start, received entry"],
])("%j is refused", (input, message) => {
  expect(() => medianBounds(input)).toThrow(message);
});
