import fc, { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { kaplanMeier } from "../../../lib/stats/kaplan-meier";
import { type Turnbull, turnbull } from "../../../lib/stats/turnbull";
import { column, timeAnswer } from "./time-answers";

const shareAfter = ({ curve }: Turnbull, time: number) => {
  const step = curve.to.findLastIndex((to) => to <= time);
  return step < 0 ? 1 : (curve.survival[step] as number);
};

test("kidney data seen every thirty days: R's survfit, which stops once nothing moves by 5e-5", () => {
  const { input, expected } = timeAnswer("turnbull-kidney");
  const ours = turnbull({ after: column(input, "after"), by: input.by as (number | null)[], patient: column(input, "id") });
  (expected.time as number[]).forEach((time, i) => {
    expect(Math.abs(shareAfter(ours, time) - ((expected.survival as number[])[i] as number)), `at ${time}`).toBeLessThan(2e-4);
  });
  expect([ours.n, ours.patients, ours.events]).toEqual([76, 38, 58]);
});

const exactRows = fc.array(fc.record({ time: fc.integer({ min: 1, max: 25 }), event: fc.integer({ min: 0, max: 1 }) }), {
  minLength: 2,
  maxLength: 30,
});

describe("identities", () => {
  test("exact and right-censored rows: Kaplan–Meier, events before censorings, and its median", () => {
    assert(
      property(exactRows, (data) => {
        const input = { times: data.map((d) => d.time), event: data.map((d) => d.event) };
        const [ours, { curve, estimate }] = [turnbull(input), kaplanMeier(input)];
        curve.time.forEach((time, i) => {
          expect(shareAfter(ours, time)).toBeCloseTo(curve.survival[i] as number, 6);
        });
        if (estimate === null) expect(ours.estimate).toBeNull();
        else expect(ours.estimate).toBeCloseTo(estimate, 9);
      }),
    );
  });

  const spanRows = fc.array(fc.tuple(fc.integer({ min: 0, max: 15 }), fc.option(fc.integer({ min: 1, max: 10 }))), {
    minLength: 2,
    maxLength: 25,
  });
  test("no other shares are likelier: moving a little of any share to any other span lowers the likelihood", () => {
    assert(
      property(spanRows, (data) => {
        const after = data.map(([from]) => from);
        const by = data.map(([from, width]) => (width === null ? null : from + width));
        const { curve, logLikelihood } = turnbull({ after, by });
        const open = 1 - curve.mass.reduce((sum, share) => sum + share, 0);
        const shares = [...curve.mass, open];
        const covers = (row: number, j: number) => {
          if (j === curve.from.length) return by[row] === null;
          return (curve.from[j] as number) >= (after[row] as number) && (curve.to[j] as number) <= (by[row] ?? Infinity);
        };
        const likelihood = (mass: readonly number[]) =>
          after.reduce((sum, _, row) => sum + Math.log(mass.reduce((p, share, j) => p + (covers(row, j) ? share : 0), 0)), 0);
        expect(likelihood(shares)).toBeCloseTo(logLikelihood, 6);
        shares.forEach((share, from) => {
          shares.forEach((_, to) => {
            const little = Math.min(1e-3, share / 2);
            const moved = shares.map((one, j) => one + (j === to ? little : 0) - (j === from ? little : 0));
            expect(likelihood(moved)).toBeLessThanOrEqual(logLikelihood + 1e-6);
          });
        });
      }),
      { numRuns: 60 },
    );
  });
});

describe("by hand", () => {
  test("one row in (30, 60], one in (60, 90], one not yet at 60", () => {
    const ours = turnbull({ after: [30, 60, 60], by: [60, 90, null] });
    expect([ours.curve.from, ours.curve.to]).toEqual([
      [30, 60],
      [60, 90],
    ]);
    // A third falls in the first span; the two others have their whole share in the second, which both cover.
    expect(ours.curve.survival[0]).toBeCloseTo(2 / 3, 6);
    expect(ours.curve.survival[1]).toBeCloseTo(0, 6);
    expect(ours.estimate).toBe(75);
    expect(ours.quartiles.lower).toBe(45);
  });
  test("left-censored: any time before", () => {
    const ours = turnbull({ after: [0, 0, 20], by: [10, 10, 30] });
    expect(ours.curve.from).toEqual([0, 20]);
    expect(ours.curve.mass[0]).toBeCloseTo(2 / 3, 6);
    expect(ours.medianSpan).toEqual([0, 10]);
  });
  test("an exact time at the start of a span lies outside it, at its end inside", () => {
    const ours = turnbull({ after: [10, 10, 20], by: [10, 20, 20] });
    expect([ours.curve.from, ours.curve.to]).toEqual([
      [10, 20],
      [10, 20],
    ]);
    expect(ours.curve.mass[0]).toBeCloseTo(1 / 3, 6);
  });
  test("nobody yet: not reached", () => {
    const ours = turnbull({ after: [10, 20], by: [null, null] });
    expect([ours.estimate, ours.medianSpan, ours.curve.survival, ours.events]).toEqual([null, null, [], 0]);
    expect(ours.notes).toEqual([{ code: "not-reached", what: "The median" }]);
    expect(ours.patients).toBeNull();
  });
  test("nobody left: the curve ends at exactly zero", () => {
    expect(turnbull({ times: [1, 2, 3], event: [1, 1, 1] }).curve.survival.at(-1)).toBe(0);
  });
});

test.each([
  [{ after: [5], by: [4] }, "turnbull requires by to be null or not before after (5), received 4 at 0"],
  [{ after: [5, 6], by: [7] }, "turnbull requires by as long as after (2), received 1"],
  [{}, "turnbull requires times with event, or after with by, received neither pair alone"],
])("%j is refused", (input, message) => {
  expect(() => turnbull(input)).toThrow(message);
});
