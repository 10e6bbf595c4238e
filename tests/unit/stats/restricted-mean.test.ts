import { describe, expect, test } from "vitest";
import { kaplanMeier } from "../../../lib/stats/kaplan-meier";
import { restrictedMeanDifference } from "../../../lib/stats/restricted-mean-difference";
import { reverseKaplanMeier } from "../../../lib/stats/reverse-kaplan-meier";
import { check, numbers } from "../../external/stat-checks";
import { column, expectClose, timeAnswer } from "./time-answers";

describe("difference of restricted means against R", () => {
  const freireich = check("rmst-freireich");
  const arm = freireich.input.arm as string[];
  const rows = { times: numbers(freireich, "time"), event: numbers(freireich, "event") };
  test("Freireich 1963 to 20 weeks: each arm and the difference", () => {
    const theirs = freireich.expected as unknown as Record<string, number[]> & { difference: number; difference_se: number };
    ["6-MP", "placebo"].forEach((name, i) => {
      const only = (values: number[]) => values.filter((_, row) => arm[row] === name);
      const { estimate, restrictedMean } = kaplanMeier({ times: only(rows.times), event: only(rows.event), tau: 20 });
      expectClose(restrictedMean?.estimate, theirs.rmst?.[i]);
      expectClose(restrictedMean?.se, theirs.se?.[i]);
      expect(estimate).toBe(theirs.median?.[i]);
    });
    const ours = restrictedMeanDifference({ ...rows, group: arm, tau: 20 });
    expectClose(ours.estimate, theirs.difference);
    expectClose(ours.se, theirs.difference_se);
    expect(ours.groups.map(({ label, n }) => [label, n])).toEqual([
      ["6-MP", 21],
      ["placebo", 21],
    ]);
    expectClose(
      ours.groups.map(({ mean }) => mean),
      theirs.rmst,
    );
    expectClose(
      [ours.lower, ours.upper],
      [-1, 1].map((side) => theirs.difference + side * 1.959963984540054 * theirs.difference_se),
    );
    expectClose(ours.statistic, theirs.difference / theirs.difference_se);
    const turned = restrictedMeanDifference({ ...rows, group: arm, tau: 20, between: ["placebo", "6-MP"] });
    expectClose([turned.estimate, turned.se], [-theirs.difference, theirs.difference_se]);
  });

  test("retinopathy: every patient has an eye in both arms", () => {
    const { input, expected } = timeAnswer("rmst-difference-retinopathy");
    const all = { times: column(input, "futime"), event: column(input, "status"), group: column(input, "trt") };
    const paired = restrictedMeanDifference({ ...all, patient: column(input, "id"), tau: expected.tau as number, between: [1, 0] });
    expectClose(paired.estimate, expected.estimate);
    expectClose(paired.se, expected.se);
    expect(restrictedMeanDifference({ ...all, tau: 48 }).se).not.toBeCloseTo(paired.se as number, 3);
    expect([paired.n, paired.patients]).toEqual([394, 197]);
  });
});

describe("difference of restricted means", () => {
  const input = { times: [2, 4, 6, 8, 3, 5], event: [1, 1, 1, 1, 1, 0], group: [0, 0, 1, 1, 0, 1], tau: 5 };
  test("a tau beyond the follow-up of a group is not estimable", () => {
    const ours = restrictedMeanDifference({ ...input, event: [1, 0, 1, 0, 1, 1], tau: 9 });
    expect(ours).toMatchObject({ estimate: null, se: null, lower: null, upper: null, statistic: null, p: null });
    expect(ours.groups.map(({ mean }) => mean)).toEqual([null, null]);
    expect(ours.notes).toEqual([{ code: "not-estimable", because: "the restricted mean reaches beyond the last time of a group" }]);
  });
  test("fewer than three patients: no error", () => {
    const ours = restrictedMeanDifference({ ...input, patient: [1, 2, 1, 2, 1, 2] });
    expect(ours.estimate).not.toBeNull();
    expect([ours.se, ours.lower, ours.p]).toEqual([null, null, null]);
    expect(ours.notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });
  test("rows of a third group take no part", () => {
    const two = restrictedMeanDifference(input);
    const more = { times: [...input.times, 1], event: [...input.event, 1], group: [...input.group, 7], tau: 5, between: [0, 1] as const };
    expect(restrictedMeanDifference(more)).toEqual(two);
  });
  test("late entry counts", () => {
    const late = restrictedMeanDifference({ ...input, entry: [0, 3, 0, 0, 0, 0] });
    // group 0: one of two at 2, the second enters at 3 after its own event there: 1·2 + 1/2·1, nobody left at 3
    expect(late.groups[0]?.mean).toBeCloseTo(2.5, 12);
  });
  test.each([
    [{ ...input, tau: 0 }, "restrictedMeanDifference requires tau above zero, received 0"],
    [{ ...input, group: [0, 0, 1, 1, 2, 2] }, "restrictedMeanDifference requires two groups, received 3"],
    [{ ...input, group: [0, 0, 0, 0, 0, 0] }, "restrictedMeanDifference requires two groups, received 1"],
    [{ ...input, confidence: 1.2 }, "restrictedMeanDifference requires a confidence between 0 and 1, received 1.2"],
    [{ ...input, event: [1] }, "restrictedMeanDifference requires event as long as times (6), received 1"],
  ])("%#", (wrong, message) => {
    expect(() => restrictedMeanDifference(wrong)).toThrow(message);
  });
});

describe("median follow-up", () => {
  test("lung data against R", () => {
    const { input, expected } = timeAnswer("reverse-km-lung");
    const ours = reverseKaplanMeier({ times: column(input, "time"), event: column(input, "status").map((status) => status - 1) });
    expectClose([ours.estimate, ours.lower, ours.upper], [expected.median, expected.medianLower, expected.medianUpper] as number[]);
    const keep = ours.curve.events.flatMap((d, i) => (d > 0 && ours.curve.survival[i] ? [i] : []));
    expectClose(
      keep.map((i) => ours.curve.survival[i]),
      expected.survival,
    );
    expect(ours.method).toMatch(/^reverse Kaplan–Meier/);
  });
  test("everybody had the event: no follow-up ended, and the note says what was not reached", () => {
    const ours = reverseKaplanMeier({ times: [1, 2, 3], event: [1, 1, 1] });
    expect(ours.estimate).toBeNull();
    expect(ours.notes).toEqual([{ code: "not-reached", what: "The median follow-up" }]);
  });
  test("refuses in its own name", () => {
    expect(() => reverseKaplanMeier({ times: [1], event: [2] })).toThrow(
      "reverseKaplanMeier requires event codes from 0 to 1, received 2 at 0",
    );
  });
});
