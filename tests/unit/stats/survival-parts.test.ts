import fc, { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { normalPlot, normalQuantile } from "@/lib/stats";
import { logRank } from "../../../lib/stats/log-rank";
import { cholesky, inverseOfCholesky, sandwich, solveCholesky } from "../../../lib/stats/survival/cholesky";
import { timeAtLevel } from "../../../lib/stats/survival/curve-quantile";
import { logNormalScores } from "../../../lib/stats/survival/log-normal-scores";
import { logRankScores } from "../../../lib/stats/survival/log-rank-scores";
import { exactTerm, spanTerm } from "../../../lib/stats/survival/normal-span";
import { patientProducts } from "../../../lib/stats/survival/patient-products";
import { quadraticForm } from "../../../lib/stats/survival/quadratic-form";
import { rowsByStep, rowsInOrder } from "../../../lib/stats/survival/sort-rows";
import { timeModel } from "../../../lib/stats/time-model";

describe("sorting by the bits of numbers", () => {
  const numbers = fc.oneof(
    fc.constant(0),
    fc.constant(-0),
    fc.double({ min: -1e300, max: 1e300, noNaN: true }),
    fc.integer({ min: -50, max: 50 }),
    fc.constantFrom(Infinity, -Infinity, Number.MIN_VALUE, -Number.MIN_VALUE),
  );
  test("the order of a comparing sort, equal values in the order of their rows", () => {
    assert(
      property(fc.array(numbers, { maxLength: 60 }), (values) => {
        const compared = values.map((_, row) => row).sort((a, b) => (values[a] as number) - (values[b] as number) || a - b);
        expect(Array.from(rowsInOrder(values))).toEqual(compared);
      }),
    );
  });
  test("rows gathered by step, in the order of rows within a step", () => {
    const { first, rows } = rowsByStep([2, 0, 2, 1, 0], 4);
    expect([Array.from(first), Array.from(rows)]).toEqual([
      [0, 2, 3, 5, 5],
      [1, 4, 3, 0, 2],
    ]);
  });
});

describe("time by which a curve has come down", () => {
  test.each([
    [[1, 2, 3], [0.8, 0.5, 0.4], 2.5],
    [[1, 2, 3], [0.8, 0.5, 0.5], 2],
    [[1, 2, 3], [0.5, null, 0.4], 2],
    [[1, 2, 3], [null, 0.3, 0.2], 2],
    [[1, 2], [0.5, null], 1],
    [[1, 2], [0.8, null], null],
    // within rounding of the level, and just beyond it
    [[1, 2], [0.5 + 1e-9, 0.2], 1.5],
    [[1, 2], [0.5 - 1e-9, 0.2], 1.5],
    [[1, 2], [0.5 + 1e-7, 0.2], 2],
    [[1, 2], [0.5 - 1e-7, 0.2], 1],
    [[], [], null],
  ])("times %j, shares %j: %s", (time, share, expected) => {
    expect(timeAtLevel(time, share, 0.5)).toBe(expected);
  });
});

describe("running sums of products by patient", () => {
  test("agree with the sums taken anew", () => {
    const changes = fc.tuple(
      fc.integer({ min: 0, max: 3 }),
      fc.integer({ min: -9, max: 9 }),
      fc.integer({ min: -9, max: 9 }),
      fc.integer({ min: -9, max: 9 }),
    );
    assert(
      property(fc.array(changes, { minLength: 1, maxLength: 20 }), (list) => {
        const sums = patientProducts(4, 3);
        const held = Array.from({ length: 4 }, () => [0, 0, 0]);
        for (const [patient, ...change] of list) {
          sums.add(patient, change);
          change.forEach((by, kind) => {
            const own = held[patient] as number[];
            own[kind] = (own[kind] as number) + by;
          });
        }
        const weights = [2, -1, 3];
        const direct = held.reduce(
          (sum, own) => sum + own.reduce((part, value, kind) => part + value * (weights[kind] as number), 0) ** 2,
          0,
        );
        expect(sums.sumOfSquares(weights)).toBe(direct);
      }),
    );
  });
});

describe("Cholesky", () => {
  const matrix = Float64Array.from([4, 2, 2, 2, 5, 1, 2, 1, 6]);
  test("solves and inverts", () => {
    const lower = cholesky(matrix, 3) as Float64Array;
    const x = solveCholesky(lower, [8, 8, 9]);
    for (let i = 0; i < 3; i++) {
      const row = [0, 1, 2].reduce((sum, j) => sum + (matrix[i * 3 + j] as number) * (x[j] as number), 0);
      expect(row).toBeCloseTo([8, 8, 9][i] as number, 12);
    }
    const inverse = inverseOfCholesky(lower, 3);
    // A⁻¹·A·A⁻¹ᵀ = A⁻¹
    const again = sandwich(inverse, matrix, 3);
    for (const [i, value] of again.entries()) expect(value).toBeCloseTo(inverse[i] as number, 12);
  });
  test("a matrix that isn't positive definite, or hardly, is refused", () => {
    expect(cholesky(Float64Array.from([1, 2, 2, 4]), 2)).toBeNull();
    expect(cholesky(Float64Array.from([1, 1, 1, 1 + 1e-13]), 2)).toBeNull();
    expect(cholesky(Float64Array.from([1, 1, 1, 1 + 1e-9]), 2)).not.toBeNull();
    expect(cholesky(Float64Array.from([0]), 1)).toBeNull();
    expect(cholesky(Float64Array.from([-1]), 1)).toBeNull();
  });
  test("sandwich of a wide matrix: two combinations of three", () => {
    const a = Float64Array.from([1, 0, 2, 0, 1, -1]);
    // by hand: row one · M = [8, 4, 14], row two · M = [0, 4, −5]
    expect(Array.from(sandwich(a, matrix, 3))).toEqual([36, -10, -10, 9]);
  });
});

test("quadratic form: whichever group is left out, the same", () => {
  const variance = Float64Array.from([5, -3, -2, -3, 4, -1, -2, -1, 3]);
  const turned = Float64Array.from([3, -1, -2, -1, 4, -3, -2, -3, 5]);
  const value = quadraticForm(Float64Array.from([1, 2, -3]), variance) as number;
  expect(quadraticForm(Float64Array.from([-3, 2, 1]), turned)).toBeCloseTo(value, 12);
  // by hand: [1 2]·[5 −3; −3 4]⁻¹·[1 2]ᵀ = (4 + 12 + 20)/11
  expect(value).toBeCloseTo(36 / 11, 12);
  expect(quadraticForm(Float64Array.from([0, 0]), new Float64Array(4))).toBeNull();
});

describe("derivatives of one row's log-likelihood against differences", () => {
  const step = 1e-5;
  const terms: readonly (readonly [string, (term: Float64Array, eta: number, theta: number) => void])[] = [
    ["exact", (term, eta, theta) => exactTerm(term, 0.7, eta, theta)],
    ["right-censored", (term, eta, theta) => spanTerm(term, 0.7, Infinity, eta, theta)],
    ["left-censored", (term, eta, theta) => spanTerm(term, -Infinity, -0.4, eta, theta)],
    ["between, above", (term, eta, theta) => spanTerm(term, 0.5, 1.1, eta, theta)],
    ["between, below", (term, eta, theta) => spanTerm(term, -1.3, -0.2, eta, theta)],
    ["between, across", (term, eta, theta) => spanTerm(term, -0.6, 0.9, eta, theta)],
    ["right-censored, far", (term, eta, theta) => spanTerm(term, 30, Infinity, eta, theta)],
    ["between, far below", (term, eta, theta) => spanTerm(term, -31, -30, eta, theta)],
  ];
  test.each(terms)("%s", (_, fill) => {
    const at = (eta: number, theta: number) => {
      const term = new Float64Array(6);
      fill(term, eta, theta);
      return term;
    };
    const [eta, theta] = [0.3, 1.4];
    const here = at(eta, theta);
    const slope = (of: number, d: [number, number]) =>
      ((at(eta + d[0] * step, theta + d[1] * step)[of] as number) - (at(eta - d[0] * step, theta - d[1] * step)[of] as number)) /
      (2 * step);
    const near = (value: number | undefined, other: number) =>
      expect(Math.abs((value as number) - other)).toBeLessThan(1e-6 * (1 + Math.abs(other)));
    near(here[1], slope(0, [1, 0]));
    near(here[2], slope(0, [0, 1]));
    near(here[3], slope(1, [1, 0]));
    near(here[4], slope(1, [0, 1]));
    near(here[4], slope(2, [1, 0]));
    near(here[5], slope(2, [0, 1]));
  });
});

describe("scores that a permutation exchanges", () => {
  const times = [3, 5, 7, 9, 4, 6, 8, 2, 5];
  const event = [1, 1, 0, 1, 1, 0, 1, 1, 1];
  const group = [..."aababbaab"];
  test("log-rank: over a group they sum to observed less expected", () => {
    for (const entry of [undefined, [0, 1, 0, 2, 0, 0, 5, 0, 0]]) {
      const { observed, expected, groups } = logRank({ times, event, group, entry });
      const scores = logRankScores({ times, event, entry });
      groups.forEach((label, i) => {
        const sum = scores.reduce((total, score, row) => (group[row] === label ? total + score : total), 0);
        expect(sum).toBeCloseTo((observed[i] as number) - (expected[i] as number), 12);
      });
    }
  });
  test("time model: exact rows have their residual in standard deviations, and all sum to zero", () => {
    const design = times.map((_, i) => [i % 3]);
    const scores = logNormalScores("test", { times, event, design });
    const { coefficients, scale } = timeModel({ times, event, design });
    const [b0, b1] = coefficients.map((one) => one.estimate) as [number, number];
    times.forEach((time, i) => {
      const z = (Math.log(time) - b0 - b1 * (i % 3)) / scale;
      if (event[i]) expect(scores[i]).toBeCloseTo(z, 8);
      else expect(scores[i]).toBeGreaterThan(z);
    });
    expect(scores.reduce((sum, score) => sum + score, 0)).toBeCloseTo(0, 8);
  });
});

describe("a normal q–q plot", () => {
  test("of values all observed stands at R's ppoints(n, 1/2)", () => {
    // qnorm(ppoints(5, 0.5)) of R
    const expected = [-1.2815515655446, -0.52440051270804, 0, 0.52440051270804, 1.2815515655446];
    const plot = normalPlot({ values: [3, 1, 5, 2, 4], event: [1, 1, 1, 1, 1] });
    expect(plot.map(({ row, value }) => [row, value])).toEqual([
      [1, 1],
      [3, 2],
      [0, 3],
      [4, 4],
      [2, 5],
    ]);
    for (const [i, { normal }] of plot.entries()) expect(normal).toBeCloseTo(expected[i] ?? Number.NaN, 12);
  });

  test("one that is only known to be larger is not drawn and moves those after it up", () => {
    const plot = normalPlot({ values: [1, 2, 3, 4], event: [1, 0, 1, 1] });
    // product-limit steps: 1 to 3/4, then 3/4 to 3/8 to 0: middles 1/8, 7/16, 13/16
    expect(plot.map(({ value }) => value)).toEqual([1, 3, 4]);
    for (const [i, share] of [1 / 8, 7 / 16, 13 / 16].entries()) expect(plot[i]?.normal).toBeCloseTo(normalQuantile(share), 12);
  });

  test("equal values stand in one place, those observed before those that weren't", () => {
    const plot = normalPlot({ values: [2, 2, 2, 5], event: [1, 0, 1, 1] });
    expect(plot.map(({ normal }) => normal)).toEqual([normalQuantile(0.25), normalQuantile(0.25), normalQuantile(0.75)]);
  });
});
