import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { blandAltman, icc, type KappaWeights, sampleDeviation, weightedKappa } from "@/lib/stats";
import { check, numbers } from "../../external/stat-checks";
import { expectAsChecked } from "./as-checked";
import { answerOf, answersOf, expectAsR, expectClose, labelsOf, numbersOf, rowsOf } from "./r-answers";

describe("intraclass correlation", () => {
  test.each(["cluster-icc-healing-index", "cluster-icc-complication", "cluster-orthodont-icc", "icc-shrout-fleiss", "edge-icc-negative"])(
    "%s",
    (id) => {
      const found = check(id);
      const named = (field: string, otherwise: string) =>
        numbers(found, String(found.input[field] === undefined || Array.isArray(found.input[field]) ? otherwise : found.input[field]));
      const ours = icc({ values: named("y", "y"), patient: named("cluster", "cluster") });
      expectAsChecked(id, {
        icc: ours.estimate,
        msb: ours.betweenMeanSquare,
        msw: ours.withinMeanSquare,
        n0: ours.typicalSize,
        deff_weighted_size: ours.designEffect,
        deff_mean_size: ours.designEffectMeanSize,
        n_eff_mean_size: ours.effectiveN,
      });
    },
  );

  test("one value a patient, or all equal: not estimable, said why", () => {
    expect(icc({ values: [1, 2, 3], patient: [1, 2, 3] })).toMatchObject({
      estimate: null,
      designEffect: null,
      notes: [{ because: "no patient has two values" }],
    });
    expect(icc({ values: [2, 2, 2], patient: [1, 1, 2] })).toMatchObject({ estimate: null, notes: [{ because: "all values are equal" }] });
  });

  test("sizes of 1e-300 and 1e15, and 1e15 added", () => {
    const r = answerOf("agreement", "reml-rail");
    const [values, patient] = [numbersOf(r, "values"), labelsOf(r, "patient")];
    const before = icc({ values, patient }).estimate as number;
    for (const size of [1e-300, 1e15])
      expect(icc({ values: values.map((value) => value * size), patient }).estimate).toBeCloseTo(before, 10);
    expect(icc({ values: values.map((value) => value + 1e15), patient }).estimate).toBeCloseTo(before, 10);
  });

  test("refuses", () => {
    expect(() => icc({ values: [1, 2], patient: [1, 1] })).toThrow("icc requires at least two patients, received 1");
    expect(() => icc({ values: [], patient: [] })).toThrow("icc requires at least one value, received 0");
    expect(() => icc({ values: [1], patient: [1, 2] })).toThrow("icc requires patient as long as values (1), received 2");
  });
});

describe("Bland–Altman", () => {
  const peakFlow = (id: string) => {
    const [a, b] = [numbers(check(id), "a"), numbers(check(id), "b")];
    return blandAltman({ values: a.map((value, i) => value - (b[i] as number)), patient: a.map((_, i) => i) });
  };

  test("peak flow 1986: bias, SD and limits", () => {
    const ours = peakFlow("bland-altman-full-precision");
    const shared = {
      mean_diff: ours.estimate,
      sd_diff: Math.sqrt(ours.between + ours.within),
      bias_ci_lower: ours.lower,
      bias_ci_upper: ours.upper,
    };
    expectAsChecked("bland-altman-full-precision", {
      ...shared,
      loa_lower: ours.limitLower,
      loa_upper: ours.limitUpper,
      se_loa_1999: ours.limitSe,
    });
    expectAsChecked("bland-altman-1986-pefr", { ...shared, loa196_lower: ours.limitLower, loa196_upper: ours.limitUpper });
  });

  test.each(answersOf("agreement", "reml-"))("%s: variance between and within as by REML in R", (_, r) => {
    expectAsR(blandAltman({ values: numbersOf(r, "values"), patient: labelsOf(r, "patient") }), r, ["between", "within"], 1e-7);
  });

  test.each(answersOf("agreement", "reml-"))("%s: intervals of the limits as from whole matrices and clubSandwich", (_, r) => {
    const ours = blandAltman({ values: numbersOf(r, "values"), patient: labelsOf(r, "patient") });
    expectAsR({ variance_df: ours.varianceDf, limit_se: ours.limitSe }, r, ["variance_df", "limit_se"], 1e-7);
    for (const [field, interval] of [
      ["limit_lower_ci", ours.limitLowerInterval],
      ["limit_upper_ci", ours.limitUpperInterval],
    ] as const) {
      const [from, to] = numbersOf(r, field);
      expectClose(interval?.lower, from, field, 1e-7);
      expectClose(interval?.upper, to, field, 1e-7);
    }
  });

  test("patients who repeat themselves tell of the deviation what their means tell; two patients: no interval of a limit", () => {
    const once = blandAltman({ values: [1, 3, 5, 4], patient: [1, 2, 3, 4] });
    expect(once.varianceDf).toBe(3);
    expect(blandAltman({ values: [1, 1, 3, 3, 5, 5, 4, 4], patient: [1, 1, 2, 2, 3, 3, 4, 4] }).varianceDf).toBe(3);
    const two = { varianceDf: null, limitSe: null, limitLowerInterval: null, limitUpperInterval: null };
    expect(blandAltman({ values: [1, 2, 4], patient: [1, 1, 2] })).toMatchObject(two);
  });

  test("one value a patient: the two parts add up to SD², by the same formula", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 3, maxLength: 30 }), (values) => {
        const { between, within } = blandAltman({ values, patient: values.map((_, i) => i) });
        const square = (sampleDeviation(values) as number) ** 2;
        expect(Math.abs(between + within - square)).toBeLessThanOrEqual(1e-9 * square + 1e-18);
      }),
    );
  });

  test("balanced rows: the parts are those of analysis of variance, and no negative part", () => {
    const found = icc({ values: [1, 9, 2, 8], patient: [1, 1, 2, 2] });
    expect(found.estimate).toBeLessThan(0);
    expect(blandAltman({ values: [1, 9, 2, 8], patient: [1, 1, 2, 2] }).between).toBe(0);
  });

  test("patients who repeat themselves exactly: all variance is between them", () => {
    expect(blandAltman({ values: [1, 1, 3, 3, 5], patient: [1, 1, 2, 2, 3] })).toMatchObject({ within: 0, between: 4 });
  });

  test("all equal: limits without width; sizes of 1e-300 and 1e15 keep their digits", () => {
    expect(blandAltman({ values: [3, 3, 3], patient: [1, 2, 3] })).toMatchObject({ limitLower: 3, limitUpper: 3, within: 0 });
    const r = answerOf("agreement", "reml-orthodont-uneven");
    const [values, patient] = [numbersOf(r, "values"), labelsOf(r, "patient")];
    const before = blandAltman({ values, patient });
    for (const size of [1e-300, 1e15]) {
      const scaled = blandAltman({ values: values.map((value) => value * size), patient });
      expect(scaled.limitUpper / size).toBeCloseTo(before.limitUpper, 8);
    }
  });

  test("refuses", () => {
    expect(() => blandAltman({ values: [1], patient: [1] })).toThrow("blandAltman requires at least two values, received 1");
    expect(() => blandAltman({ values: [1, 2], patient: [1, 2], coverage: 2 })).toThrow(
      "blandAltman requires a confidence between 0 and 1, received 2",
    );
    expect(() => blandAltman({ values: [1, 2], patient: [1] })).toThrow("cr2Mean requires patient as long as values (2), received 1");
  });
});

describe("weighted kappa", () => {
  const spread = (table: readonly (readonly number[])[]) => {
    const rows = table.flatMap((row, i) => row.flatMap((count, j) => Array.from({ length: count }, () => [i, j] as const)));
    return { first: rows.map(([i]) => i), second: rows.map(([, j]) => j), patient: rows.map((_, i) => i), classes: table.length, seed: 20 };
  };

  test("Cohen 1968: unweighted kappa 0.492", () => {
    const table = check("kappa-cohen-1968").input.table as readonly (readonly number[])[];
    const ours = weightedKappa({ ...spread(table), weights: "unweighted", repeats: 99 });
    expectAsChecked("kappa-cohen-1968", { unweighted: ours.estimate });
    expect(ours.table).toEqual(table);
  });

  test.each(answersOf("agreement", "kappa-"))("%s: three weightings as from the definitions in R", (_, r) => {
    for (const weights of ["unweighted", "linear", "quadratic"] as const satisfies readonly KappaWeights[]) {
      const { estimate } = weightedKappa({ ...spread(rowsOf(r, "table")), weights, repeats: 1 });
      expectAsR({ [weights]: estimate }, r, [weights]);
    }
  });

  test("with two classes all weightings are one", () => {
    const rows = spread([
      [9, 3],
      [2, 7],
    ]);
    const [plain, square] = (["unweighted", "quadratic"] as const).map((weights) => weightedKappa({ ...rows, weights }));
    expect(square).toMatchObject({ estimate: plain?.estimate, lower: plain?.lower, upper: plain?.upper });
  });

  test("the interval: same seed, same limits; patients, not rows, are drawn", () => {
    const rows = spread([
      [12, 2, 0],
      [3, 9, 2],
      [0, 1, 8],
    ]);
    const once = weightedKappa(rows);
    expect(weightedKappa(rows)).toEqual(once);
    expect(once.lower as number).toBeLessThan(once.estimate as number);
    expect(once.upper as number).toBeGreaterThan(once.estimate as number);
    const twice = (list: readonly number[]) => list.flatMap((one) => [one, one]);
    const doubled = weightedKappa({ ...rows, first: twice(rows.first), second: twice(rows.second), patient: twice(rows.patient) });
    expect([doubled.lower, doubled.upper, doubled.se]).toEqual([once.lower, once.upper, once.se]);
  });

  test("19 patients: no interval, said so; one class throughout: no kappa", () => {
    const few = weightedKappa(
      spread([
        [10, 2],
        [1, 6],
      ]),
    );
    expect(few).toMatchObject({ lower: null, upper: null, notes: [{ code: "too-few-for-interval", patients: 19, needed: 20 }] });
    const one = weightedKappa(
      spread([
        [25, 0],
        [0, 0],
      ]),
    );
    expect(one).toMatchObject({ estimate: null, lower: null, notes: [{ code: "constant-values" }] });
  });

  test("resamples that all fall in one class give no limits", () => {
    const rows = {
      ...spread([
        [24, 1],
        [0, 0],
      ]),
      seed: 3,
    };
    const ours = weightedKappa({ ...rows, repeats: 1 });
    expect([ours.se, ours.lower]).toEqual([null, null]);
  });

  test("refuses", () => {
    const rows = spread([
      [1, 0],
      [0, 1],
    ]);
    expect(() => weightedKappa({ ...rows, classes: 1 })).toThrow(
      "weightedKappa requires classes to be a whole number of at least 2, received 1",
    );
    expect(() => weightedKappa({ ...rows, first: [0, 2] })).toThrow("weightedKappa requires classes numbered 0 to 1, received 2");
    expect(() => weightedKappa({ ...rows, first: [] })).toThrow("weightedKappa requires at least one row, received 0");
    expect(() => weightedKappa({ ...rows, second: [0] })).toThrow("weightedKappa requires second as long as first (2), received 1");
    expect(() => weightedKappa({ ...rows, seed: 0.5 })).not.toThrow(); // two patients: nothing is drawn
  });
});
