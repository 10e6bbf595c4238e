import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { medianInterval, noncentralTUpper, pairedT, smallestDetectableDifference, standardisedDifference, welch } from "@/lib/stats";
import { check, numbers } from "../../external/stat-checks";
import { answerOf, answersOf, expectAsR, expectClose, labelsOf, numbersOf } from "./r-answers";

const rowsOf = (r: ReturnType<typeof answerOf>) => ({
  values: numbersOf(r, "values"),
  group: labelsOf(r, "group"),
  patient: labelsOf(r, "patient"),
});
const twoColumns = (id: string) => {
  const [a, b] = [numbers(check(id), "a"), numbers(check(id), "b")];
  return { a, b, values: [...a, ...b], group: [...a.map(() => "a"), ...b.map(() => "b")] };
};
const fields = ["estimate", "se", "df", "lower", "upper", "statistic", "p"] as const;

describe("Welch's t (R t.test)", () => {
  test("of patient means", () => {
    const r = answerOf("means", "welch-orthodont");
    const ours = welch(rowsOf(r));
    expectAsR(ours, r, fields);
    expect(ours).toMatchObject({ n: 108, patients: 27 });
  });

  test("of single values, invented", () => {
    const { values, group } = twoColumns("t-welch-fixture");
    const { expected } = check("t-welch-fixture");
    const ours = welch({ values, group, patient: values.map((_, i) => i) });
    const theirs = [expected.mean_diff, expected.t, expected.df, expected.p, expected.ci_lower, expected.ci_upper];
    [ours.estimate, ours.statistic, ours.df, ours.p, ours.lower, ours.upper].forEach((value, i) => {
      expectClose(value, theirs[i], String(i));
    });
  });

  test("Darwin's plants", () => {
    const { values, group } = twoColumns("t-darwin");
    const { expected } = check("t-darwin");
    const ours = welch({ values, group, patient: values.map((_, i) => i) });
    expectClose(ours.statistic, expected.welch_t, "t");
    expectClose(ours.df, expected.welch_df, "df");
    expectClose(ours.p, expected.welch_p, "p");
  });

  test("two patients on a side, and equal values", () => {
    const few = welch({ values: [1, 2, 3, 4, 5], group: [1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5] });
    expect(few).toMatchObject({ estimate: -2.5, se: null, p: null, notes: [{ code: "too-few-for-interval", patients: 2, needed: 3 }] });
    const flat = welch({ values: [1, 1, 1, 2, 2, 2], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6] });
    expect(flat).toMatchObject({ estimate: -1, se: 0, df: null, lower: null, p: null, notes: [{ code: "constant-values" }] });
  });

  test("what it refuses", () => {
    expect(() => welch({ values: [1], group: [1], patient: [1] })).toThrow("welch requires two groups, received 1");
    expect(() => welch({ values: [1, 2], group: [1], patient: [1, 2] })).toThrow("welch requires group as long as values (2), received 1");
  });
});

describe("paired t (R t.test)", () => {
  test("Student's sleep data", () => {
    const r = answerOf("means", "paired-sleep");
    expectAsR(pairedT(rowsOf(r)), r, fields);
  });

  test("Darwin's plants", () => {
    const { a, values, group } = twoColumns("t-darwin");
    const { expected } = check("t-darwin");
    const ours = pairedT({ values, group, patient: values.map((_, i) => i % a.length) });
    expectClose(ours.estimate, expected.paired_mean_diff, "difference");
    expectClose(ours.statistic, expected.paired_t, "t");
    expectClose(ours.p, expected.paired_p, "p");
    expectClose(ours.lower, expected.paired_ci_lower, "lower");
    expect(ours.df).toBe(expected.paired_df);
  });

  test("several bones on a side are averaged first; patients on one side only are counted out", () => {
    const ours = pairedT({
      values: [4, 6, 3, 6, 3, 7, 3, 99],
      group: ["a", "a", "b", "a", "b", "a", "b", "a"],
      patient: [1, 1, 1, 2, 2, 3, 3, 4],
    });
    expect(ours).toMatchObject({ patients: 3, patientsInOneGroupOnly: 1, n: 8 });
    expect(ours.estimate).toBeCloseTo((2 + 3 + 4) / 3, 12);
  });

  test("too few pairs, equal differences, none", () => {
    const few = pairedT({ values: [1, 2, 3, 4], group: [1, 2, 1, 2], patient: [1, 1, 2, 2] });
    expect(few).toMatchObject({ estimate: -1, se: null, statistic: null, p: null });
    const flat = pairedT({ values: [1, 2, 3, 4, 5, 6], group: [1, 2, 1, 2, 1, 2], patient: [1, 1, 2, 2, 3, 3] });
    expect(flat).toMatchObject({ se: 0, statistic: null, p: null, notes: [{ code: "constant-values" }] });
    expect(() => pairedT({ values: [1, 2], group: [1, 2], patient: [1, 2] })).toThrow(
      "pairedT requires patients in both groups, received 0",
    );
  });
});

describe("standardised differences (closed forms in R)", () => {
  test.each(["continuous", "binary", "levels"] as const)("%s", (kind) => {
    const r = answerOf("means", `smd-${kind}`);
    const ours = standardisedDifference({ kind, values: numbersOf(r, "values"), group: labelsOf(r, "group") });
    expectAsR(ours, r, ["estimate"]);
  });

  test("two levels are a binary without its sign; which level is left out doesn't matter", () => {
    const bit = fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 4, maxLength: 30 });
    fc.assert(
      fc.property(bit, bit, (a, b) => {
        const group = [...a.map(() => "a"), ...b.map(() => "b")];
        const values = [...a, ...b];
        const binary = values.map((value) => Math.min(value, 1));
        const [two, one] = [
          standardisedDifference({ kind: "levels", values: binary, group }).estimate,
          standardisedDifference({ kind: "binary", values: binary, group }).estimate,
        ];
        expect(two === null).toBe(one === null);
        if (one !== null) expect(two).toBeCloseTo(Math.abs(one), 9);
        const there = standardisedDifference({ kind: "levels", values, group }).estimate;
        const back = standardisedDifference({
          kind: "levels",
          values: values.map((value) => 2 - value),
          group,
          between: ["b", "a"],
        }).estimate;
        if (there !== null && back !== null && there < 100) expect(back).toBeCloseTo(there, 6);
      }),
    );
  });

  test("no difference without spread is 0, a difference without spread has no size", () => {
    const group = [1, 1, 2, 2];
    expect(standardisedDifference({ kind: "continuous", values: [3, 3, 3, 3], group }).estimate).toBe(0);
    const apart = standardisedDifference({ kind: "continuous", values: [3, 3, 4, 4], group });
    expect(apart).toMatchObject({ estimate: null, notes: [{ code: "not-estimable", because: "no spread to measure the difference in" }] });
    expect(standardisedDifference({ kind: "levels", values: ["a", "a", "b", "b"], group }).estimate).toBeNull();
    expect(standardisedDifference({ kind: "levels", values: ["a", "a", "a", "a"], group }).estimate).toBe(0);
    // several levels on each side, none in common: a rounding error is no spread
    const apartLevels = ["a", "b", "c", "a", "d", "e", "f", "d", "e"];
    expect(standardisedDifference({ kind: "levels", values: apartLevels, group: [1, 1, 1, 1, 2, 2, 2, 2, 2] }).estimate).toBeNull();
    const tenths = [0.1, 0.1, 0.1, 0.3, 0.3, 0.3];
    expect(standardisedDifference({ kind: "continuous", values: tenths, group: [1, 1, 1, 2, 2, 2] }).estimate).toBeNull();
    expect(standardisedDifference({ kind: "continuous", values: [3, 4], group: [1, 2] }).estimate).toBeNull();
  });

  test("what they refuse", () => {
    expect(() => standardisedDifference({ kind: "binary", values: [0, 2], group: [1, 2] })).toThrow(
      "standardisedDifference requires binary values of 0 or 1, received another value",
    );
    expect(() => standardisedDifference({ kind: "continuous", values: [0, Number.NaN], group: [1, 2] })).toThrow(
      "standardisedDifference requires finite numbers in values, received NaN at 0",
    );
    expect(() => standardisedDifference({ kind: "levels", values: [], group: [] })).toThrow(
      "standardisedDifference requires at least one row, received 0",
    );
  });
});

describe("the smallest detectable difference (R power.t.test)", () => {
  test.each(answersOf("means", "sdd-"))("%s", (_, r) => {
    const input = r as unknown as { se: number; df: number; power: number; confidence: number };
    expectAsR(smallestDetectableDifference(input), r, ["estimate"]);
  });

  test("the noncentral t behind it (R pt)", () => {
    const grid = answerOf("means", "grid-noncentral-t");
    numbersOf(grid, "t").forEach((t, i) => {
      const ours = noncentralTUpper(t, numbersOf(grid, "df")[i] as number, numbersOf(grid, "noncentrality")[i] as number);
      expect(ours).toBeCloseTo(numbersOf(grid, "value")[i] as number, 10);
    });
  });

  test("what it refuses", () => {
    expect(() => smallestDetectableDifference({ se: 0, df: 5 })).toThrow("smallestDetectableDifference requires se above zero, received 0");
    expect(() => smallestDetectableDifference({ se: 1, df: 0.5 })).toThrow(
      "smallestDetectableDifference requires at least one degree of freedom, received 0.5",
    );
    expect(() => smallestDetectableDifference({ se: 1, df: 5, power: 0.01 })).toThrow("requires a power between 0.025");
    expect(() => smallestDetectableDifference({ se: 1, df: 1, power: 0.9999 })).toThrow(
      "requires a power that 1 degrees of freedom can reach, received 0.9999",
    );
    expect(() => noncentralTUpper(-1, 3, 1)).toThrow("noncentralTUpper requires t above zero, received -1");
    expect(() => noncentralTUpper(1, 3, 40)).toThrow("noncentralTUpper requires a noncentrality below 37, received 40");
  });
});

describe("the interval of a median between order statistics", () => {
  test("as by R pbinom", () => {
    const found = check("median-ci-binomial");
    const ours = medianInterval({ values: Object.freeze(numbers(found, "x")) });
    expect([ours.estimate, ours.lower, ours.upper]).toEqual([found.expected.median, found.expected.lower, found.expected.upper]);
    expect(ours.coverage).toBeCloseTo(Number(found.expected.coverage), 9);
  });

  // P(all six on one side) = 2/64, so 1 − 1/32 = 0.96875; five leave 0.9375, below 95 %.
  test("six values reach 95 %, five don't", () => {
    expect(medianInterval({ values: [1, 2, 3, 4, 5, 6] })).toMatchObject({ lower: 1, upper: 6, coverage: 0.96875 });
    expect(medianInterval({ values: [1, 2, 3, 4, 5] })).toMatchObject({
      estimate: 3,
      lower: null,
      upper: null,
      notes: [{ code: "not-estimable", because: "5 values are too few for an interval of the median" }],
    });
    expect(() => medianInterval({ values: [] })).toThrow("medianInterval requires at least one value, received 0");
  });
});
