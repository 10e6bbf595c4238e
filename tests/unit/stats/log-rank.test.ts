import fc, { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { logRank } from "../../../lib/stats/log-rank";
import { check, numbers, toleranceOf } from "../../external/stat-checks";
import { column, expectClose, timeAnswer } from "./time-answers";

describe("against printed figures and R", () => {
  const freireich = check("logrank-freireich");
  test("Freireich 1963: 9 against 19.3 expected, 21 against 10.7, chi-square 16.8", () => {
    const ours = logRank({
      times: numbers(freireich, "time"),
      event: numbers(freireich, "event"),
      group: freireich.input.arm as string[],
    });
    expect(ours.groups).toEqual(["6-MP", "placebo"]);
    const printed = freireich.expected as unknown as { observed: number[]; expected: number[]; chisq: number; p: number };
    expect(ours.observed).toEqual(printed.observed);
    printed.expected.forEach((value, i) => {
      expect(Math.abs((ours.expected[i] as number) - value)).toBeLessThanOrEqual(toleranceOf(freireich, "expected"));
    });
    expect(Math.abs((ours.statistic as number) - printed.chisq)).toBeLessThanOrEqual(toleranceOf(freireich, "chisq"));
    expect(Math.abs((ours.p as number) - printed.p)).toBeLessThanOrEqual(toleranceOf(freireich, "p"));
    expectClose(ours.expected, freireich.computed?.expected);
    expectClose(ours.statistic, freireich.computed?.chisq);
    expectClose((ours.p as number) * 1e5, (freireich.computed?.p as number) * 1e5);
    expect(ours.df).toBe(1);
  });

  test("three groups with ties", () => {
    const three = check("logrank-3groups-ties");
    const ours = logRank({ times: numbers(three, "time"), event: numbers(three, "event"), group: numbers(three, "group") });
    expect(ours.observed).toEqual(three.expected.observed);
    expectClose(ours.expected, three.expected.expected, 1e-9);
    expectClose([ours.statistic, ours.df, ours.p], [three.expected.chisq, three.expected.df, three.expected.p] as number[], 1e-9);
  });

  test.each([
    ["logrank-kidney-sex", "time", "sex"],
    ["logrank-kidney-disease", "time", "disease"],
    ["logrank-retinopathy", "futime", "trt"],
  ])("%s: plain and robust by patient", (id, time, by) => {
    const { input, expected } = timeAnswer(id);
    const rows = { times: column(input, time), event: column(input, "status"), group: input[by] as (string | number)[] };
    const robust = logRank({ ...rows, patient: column(input, "id") });
    const order = by === "disease" ? ["Other", "GN", "AN", "PKD"].map((label) => robust.groups.indexOf(label)) : [0, 1];
    expectClose(
      order.map((i) => robust.observed[i]),
      expected.observed,
    );
    expectClose(
      order.map((i) => robust.expected[i]),
      expected.expected,
    );
    expectClose(robust.plain.statistic, expected.statistic);
    expectClose(robust.statistic, expected.robust);
    const plain = logRank(rows);
    expect([plain.statistic, plain.p]).toEqual([robust.plain.statistic, robust.plain.p]);
    expect([plain.patients, robust.patients]).toEqual([null, new Set(column(input, "id")).size]);
  });
});

test("heart data, delayed entry and several rows a patient: the robust score of R's coxph", () => {
  const { input, expected } = timeAnswer("logrank-heart-entry");
  const rows = { times: column(input, "stop"), entry: column(input, "start"), event: column(input, "event") };
  const ours = logRank({ ...rows, group: input.transplant as string[], patient: column(input, "id") });
  expectClose(ours.statistic, expected.robust);
});

const rows = fc.array(
  fc.record({ time: fc.integer({ min: 1, max: 20 }), event: fc.integer({ min: 0, max: 1 }), group: fc.integer({ min: 1, max: 3 }) }),
  { minLength: 6, maxLength: 40 },
);

test("observed and expected have the same sum, and the order of rows and names of groups change nothing", () => {
  assert(
    property(rows, (data) => {
      if (new Set(data.map((d) => d.group)).size < 2) return;
      const input = { times: data.map((d) => d.time), event: data.map((d) => d.event), group: data.map((d) => d.group) };
      const ours = logRank(input);
      const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
      expect(sum(ours.expected)).toBeCloseTo(sum(ours.observed), 9);
      const turned = {
        times: [...input.times].reverse(),
        event: [...input.event].reverse(),
        group: input.group.map((g) => 4 - g).reverse(),
      };
      const again = logRank(turned);
      if (ours.statistic === null) expect(again.statistic).toBeNull();
      else expect(again.statistic).toBeCloseTo(ours.statistic, 8);
    }),
  );
});

test("late entry: entering at zero changes nothing, entering late leaves the risk set until then", () => {
  const input = { times: [3, 5, 7, 9, 4, 6], event: [1, 1, 0, 1, 1, 1], group: ["a", "b", "a", "b", "b", "a"] };
  expect(logRank({ ...input, entry: [0, 0, 0, 0, 0, 0] })).toEqual(logRank(input));
  // By hand: the last row enters at 5. At risk a, b: at 3: 2, 3 · at 4: 1, 3 · at 5: 1, 2 · at 6: 2, 1 · at 9: 0, 1.
  const late = logRank({ ...input, entry: [0, 0, 0, 0, 0, 5] });
  expect(late.expected[0]).toBeCloseTo(2 / 5 + 1 / 4 + 1 / 3 + 2 / 3, 12);
});

test("twice the same rows under the same patient: the robust statistic is that of one row a patient", () => {
  const times = [3, 5, 7, 9, 4, 6, 8, 2];
  const one = { times, event: [1, 1, 0, 1, 1, 1, 1, 0], group: [..."abababab"], patient: times.map((_, i) => i) };
  const two = { times: [...times, ...times], event: [...one.event, ...one.event], group: [...one.group, ...one.group] };
  const doubled = logRank({ ...two, patient: [...one.patient, ...one.patient] });
  expect(doubled.statistic).toBeCloseTo(logRank(one).statistic as number, 10);
});

describe("no answer", () => {
  test("without events: no statistic, and why", () => {
    const ours = logRank({ times: [1, 2, 3], event: [0, 0, 0], group: ["a", "b", "b"] });
    expect([ours.statistic, ours.p]).toEqual([null, null]);
    expect(ours.notes).toEqual([{ code: "not-estimable", because: "a group has no variance of its own" }]);
  });
  test("fewer than three patients", () => {
    const ours = logRank({ times: [1, 2, 3], event: [1, 1, 1], group: ["a", "b", "b"], patient: [1, 2, 2] });
    expect(ours.statistic).toBeNull();
    expect(ours.notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });
});

test.each([
  [{ times: [1, 2], event: [1, 1], group: ["a", "a"] }, "logRank requires at least 2 groups, received 1"],
  [{ times: [1, 2], event: [1, 1], group: ["a"] }, "logRank requires group as long as times (2), received 1"],
  [{ times: [1, 2], event: [1, 3], group: ["a", "b"] }, "logRank requires event codes from 0 to 1, received 3 at 1"],
])("%j is refused", (input, message) => {
  expect(() => logRank(input)).toThrow(message);
});

test("groups stand in the order of their labels, numbers before texts", () => {
  expect(logRank({ times: [1, 2, 3, 4], event: [1, 1, 1, 1], group: ["b", 10, 9, "a"] }).groups).toEqual([9, 10, "a", "b"]);
});
