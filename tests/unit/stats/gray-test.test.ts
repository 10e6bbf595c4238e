import fc, { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { grayTest } from "../../../lib/stats/gray-test";
import { logRank } from "../../../lib/stats/log-rank";
import { check, numbers } from "../../external/stat-checks";
import { column, expectClose, timeAnswer } from "./time-answers";

describe("against cmprsk", () => {
  test.each([1, 2])("melanoma by ulceration, cause %i", (cause) => {
    const one = check("gray-melanoma");
    const ours = grayTest({ times: numbers(one, "time"), event: numbers(one, "status"), group: numbers(one, "ulcer"), cause });
    const theirs = one.expected[`event${cause}`] as { stat: number; p: number; df: number };
    expectClose([ours.statistic, ours.df], [theirs.stat, theirs.df], 1e-6);
    expect((ours.p as number) / theirs.p).toBeCloseTo(1, 6);
  });
  test.each([1, 2])("small fixture with ties, cause %i", (cause) => {
    const one = check("aj-fixture-ties");
    const ours = grayTest({ times: numbers(one, "time"), event: numbers(one, "status"), group: numbers(one, "group"), cause });
    expectClose([ours.statistic, ours.p, ours.df], one.expected[`gray_event${cause}`], 1e-6);
  });
  test.each(["gray-bladder-first", "gray-mgus"])("%s: both causes", (id) => {
    const { input, expected } = timeAnswer(id);
    const rows = { times: column(input, "time"), event: column(input, "status"), group: input.group as string[] };
    for (const cause of [1, 2]) {
      const ours = grayTest({ ...rows, cause });
      expectClose(ours.statistic, expected[`statistic${cause}`], 1e-8);
      expectClose(ours.p, expected[`p${cause}`], 1e-8);
      expect(ours.df).toBe(expected.df);
    }
  });
});

test("no other cause: the score is the log-rank's, so nearly its statistic", () => {
  const times = Array.from({ length: 60 }, (_, i) => i + 1);
  const input = { times, event: times.map((t) => (t % 4 ? 1 : 0)), group: times.map((t) => (t * 7) % 2) };
  const [gray, rank] = [grayTest(input), logRank(input)];
  expect(Math.abs((gray.statistic as number) - (rank.statistic as number))).toBeLessThan(0.05 * (rank.statistic as number) + 0.02);
});

test("the names of the groups and the order of the rows change nothing", () => {
  const row = fc.record({
    time: fc.integer({ min: 1, max: 15 }),
    event: fc.integer({ min: 0, max: 2 }),
    group: fc.integer({ min: 1, max: 3 }),
  });
  assert(
    property(fc.array(row, { minLength: 9, maxLength: 40 }), (data) => {
      if (new Set(data.map((d) => d.group)).size < 3) return;
      const ours = grayTest({ times: data.map((d) => d.time), event: data.map((d) => d.event), group: data.map((d) => d.group) });
      const back = [...data].reverse();
      const again = grayTest({ times: back.map((d) => d.time), event: back.map((d) => d.event), group: back.map((d) => 9 - d.group) });
      if (ours.statistic === null) expect(again.statistic).toBeNull();
      else expect(Math.abs((again.statistic as number) - ours.statistic)).toBeLessThan(1e-6 * (1 + ours.statistic));
    }),
  );
});

describe("no answer, or none allowed", () => {
  const good = { times: [1, 2, 3, 4], event: [1, 2, 1, 0], group: ["a", "b", "a", "b"] };
  test("nobody had the cause", () => {
    const ours = grayTest({ ...good, cause: 3 });
    expect([ours.statistic, ours.p]).toEqual([null, null]);
    expect(ours.notes).toEqual([{ code: "not-estimable", because: "a group has no variance of its own" }]);
  });
  test("one row a patient is welcome", () => {
    expect(grayTest({ ...good, patient: [1, 2, 3, 4] })).toMatchObject({ patients: 4, n: 4, cause: 1, groups: ["a", "b"] });
    expect(grayTest(good).patients).toBeNull();
  });
  test.each([
    [{ ...good, patient: [1, 2, 1, 4] }, "grayTest requires one row a patient, received 4 rows of 3"],
    [{ ...good, group: ["a", "a", "a", "a"] }, "grayTest requires at least 2 groups, received 1"],
    [{ ...good, cause: 0.5 }, "grayTest requires cause to be a whole number of at least 1, received 0.5"],
    [{ ...good, event: [1, 2, 1, -1] }, "grayTest requires event codes from 0 to 100, received -1 at 3"],
    [{ ...good, entry: [0, 0, 0, 0] }, "grayTest requires rows under observation from the start, received entry"],
  ])("%#", (input, message) => {
    expect(() => grayTest(input)).toThrow(message);
  });
});
