import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  betaCdf,
  betaQuantile,
  betaUpper,
  betaUpperQuantile,
  binomialAtLeast,
  binomialCdf,
  chiSquareQuantile,
  chiSquareUpper,
  fUpper,
  gammaCdf,
  gammaQuantile,
  gammaUpper,
  hypergeometric,
  hypergeometricAtLeast,
  hypergeometricCdf,
  logGamma,
  normalCdf,
  normalDensity,
  normalQuantile,
  normalTwoSided,
  normalUpper,
  poissonAtLeast,
  poissonCdf,
  tCdf,
  tQuantile,
  tTwoSided,
  tUpper,
} from "@/lib/stats";
import { check, numbers } from "../../external/stat-checks";
import { answerOf, numbersOf } from "./r-answers";

/** Agreement in relative size, so that a far tail counts as much as the middle. */
function expectAll(ours: readonly number[], theirs: readonly number[], relative: number): void {
  expect(ours).toHaveLength(theirs.length);
  ours.forEach((value, i) => {
    const other = theirs[i] as number;
    expect(Math.abs(value - other), `${i}: ours ${value}, R ${other}`).toBeLessThanOrEqual(relative * Math.abs(other) + 1e-300);
  });
}

const at = (columns: readonly (readonly number[])[], f: (...row: number[]) => number) =>
  (columns[0] as readonly number[]).map((_, i) => f(...columns.map((column) => column[i] as number)));

const byCheck: readonly [string, readonly string[], (...row: number[]) => number][] = [
  ["fn-pnorm", ["z"], (z = 0) => normalCdf(z)],
  ["fn-qnorm", ["p"], (p = 0) => normalQuantile(p)],
  ["fn-pt", ["t", "df"], (t = 0, df = 0) => tCdf(t, df)],
  ["fn-qt", ["p", "df"], (p = 0, df = 0) => tQuantile(p, df)],
  ["fn-pchisq-upper", ["x", "df"], (x = 0, df = 0) => chiSquareUpper(x, df)],
  ["fn-qchisq", ["p", "df"], (p = 0, df = 0) => chiSquareQuantile(p, df)],
  ["fn-pf-upper", ["F", "d1", "d2"], (f = 0, d1 = 0, d2 = 0) => fUpper(f, d1, d2)],
  ["fn-pbeta", ["x", "a", "b"], (x = 0, a = 0, b = 0) => betaCdf(x, a, b)],
  ["fn-qbeta", ["p", "a", "b"], (p = 0, a = 0, b = 0) => betaQuantile(p, a, b)],
  ["fn-pbinom", ["k", "n", "p"], (k = 0, n = 0, p = 0) => binomialCdf(k, n, p)],
  ["fn-ppois", ["k", "lambda"], (k = 0, mean = 0) => poissonCdf(k, mean)],
];

test.each(byCheck)("%s to 1e-12 of its size", (id, names, f) => {
  const found = check(id);
  expectAll(
    at(
      names.map((name) => numbers(found, name)),
      f,
    ),
    found.expected.value as readonly number[],
    1e-12,
  );
});

/** Wider grids of R: far tails, fractional and huge df. */
const byGrid: readonly [string, readonly string[], (...row: number[]) => number][] = [
  ["grid-lgamma", ["x"], (x = 0) => logGamma(x)],
  ["grid-qt", ["p", "df"], (p = 0, df = 0) => tQuantile(p, df)],
  ["grid-pt", ["t", "df"], (t = 0, df = 0) => tUpper(t, df)],
  ["grid-pf", ["f", "d1", "d2"], (f = 0, d1 = 0, d2 = 0) => fUpper(f, d1, d2)],
  ["grid-qbeta", ["p", "a", "b"], (p = 0, a = 0, b = 0) => betaQuantile(p, a, b)],
  ["grid-qgamma", ["p", "shape"], (p = 0, shape = 0) => gammaQuantile(p, shape)],
  ["grid-pnorm", ["z"], (z = 0) => normalUpper(z)],
  ["grid-phyper", ["k", "first", "second", "draws"], (k = 0, m = 0, n = 0, d = 0) => hypergeometricCdf(k, m, n, d)],
  ["grid-phyper-upper", ["k", "first", "second", "draws"], (k = 0, m = 0, n = 0, d = 0) => hypergeometricAtLeast(k, m, n, d)],
  ["grid-pbinom-upper", ["k", "n", "p"], (k = 0, n = 0, p = 0) => binomialAtLeast(k, n, p)],
  ["grid-ppois-upper", ["k", "mean"], (k = 0, mean = 0) => poissonAtLeast(k, mean)],
];

test.each(byGrid)("%s of R to 1e-10 of its size", (id, names, f) => {
  const grid = answerOf("means", id);
  expectAll(
    at(
      names.map((name) => numbersOf(grid, name)),
      f,
    ),
    numbersOf(grid, "value"),
    1e-10,
  );
});

describe("identities", () => {
  const probability = fc.double({ min: 1e-12, max: 1 - 1e-9, noNaN: true });
  const df = fc.double({ min: 0.5, max: 1e5, noNaN: true });

  test("a quantile is where the distribution reaches p", () => {
    fc.assert(
      fc.property(probability, df, (p, v) => {
        expect(tCdf(tQuantile(p, v), v)).toBeCloseTo(p, 9);
        expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 10);
        expect(gammaCdf(gammaQuantile(p, v), v)).toBeCloseTo(p, 8);
      }),
    );
  });

  test("the tails are each other's mirror, t² is F, two tails are twice one", () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), df, (t, v) => {
        expect(tUpper(t, v)).toBeCloseTo(tCdf(-t, v), 13);
        expect(fUpper(t * t, 1, v)).toBeCloseTo(tTwoSided(t, v), 11);
        expect(normalTwoSided(t)).toBeCloseTo(2 * normalUpper(Math.abs(t)), 14);
      }),
    );
  });

  test("infinite df is the normal; the middle is zero; the ends are infinite", () => {
    expect(tQuantile(0.975, Infinity)).toBe(normalQuantile(0.975));
    expect(tTwoSided(1.5, Infinity)).toBe(normalTwoSided(1.5));
    expect(tQuantile(0.5, 3)).toBe(0);
    expect([tQuantile(0, 3), tQuantile(1, 3), normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity, -Infinity, Infinity]);
    expect([tTwoSided(1e200, 3), fUpper(Infinity, 1, 2)]).toEqual([0, 0]);
    expect(normalDensity(0)).toBeCloseTo(1 / Math.sqrt(2 * Math.PI), 15);
  });

  test("outside their range distributions are 0 or 1", () => {
    expect([betaCdf(-1, 2, 3), betaCdf(2, 2, 3), betaUpper(-1, 2, 3), betaUpper(2, 2, 3)]).toEqual([0, 1, 1, 0]);
    expect([gammaCdf(-1, 2), gammaUpper(-1, 2), binomialAtLeast(0, 5, 0.2), binomialCdf(5, 5, 0.2), poissonAtLeast(0, 3)]).toEqual([
      0, 1, 1, 1, 1,
    ]);
    expect([hypergeometricCdf(-1, 3, 4, 2), hypergeometricAtLeast(9, 3, 4, 2)]).toEqual([0, 0]);
  });

  test("the upper quantile of a beta is the lower one of the other tail", () => {
    expect(betaUpperQuantile(0.025, 3, 5)).toBeCloseTo(betaQuantile(0.975, 3, 5), 13);
  });

  test("hypergeometric probabilities sum to one and start at the least possible count", () => {
    const { least, probabilities } = hypergeometric(8, 5, 9);
    expect(least).toBe(4);
    expect(probabilities.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 14);
  });
});

test("what they refuse", () => {
  expect(() => normalQuantile(1.2)).toThrow("normalQuantile requires p from 0 to 1, received 1.2");
  expect(() => tQuantile(0.5, 0)).toThrow("tQuantile requires degrees of freedom above zero, received 0");
  expect(() => tTwoSided(1, -1)).toThrow("tTwoSided requires degrees of freedom above zero, received -1");
  expect(() => fUpper(-1, 1, 1)).toThrow("fUpper requires a statistic of at least zero, received -1");
  expect(() => fUpper(1, 0, 1)).toThrow("fUpper requires degrees of freedom above zero, received 0 and 1");
  expect(() => gammaUpper(1, 0)).toThrow("gammaUpper requires shape above zero, received 0");
  expect(() => betaQuantile(0.5, 0, 1)).toThrow("betaQuantile requires a above zero, received 0");
  expect(() => betaUpperQuantile(2, 1, 1)).toThrow("betaUpperQuantile requires p from 0 to 1, received 2");
  expect(() => binomialCdf(5, 4, 0.5)).toThrow("binomialCdf requires k of at most n (4), received 5");
  expect(() => poissonCdf(1.5, 2)).toThrow("poissonCdf requires k to be a whole number of at least 0, received 1.5");
  expect(() => poissonCdf(1, -2)).toThrow("poissonCdf requires a mean of at least zero, received -2");
  expect(() => hypergeometric(3, 4, 8)).toThrow("hypergeometric requires at most 7 draws, received 8");
});
