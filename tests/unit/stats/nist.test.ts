import { describe, expect, test } from "vitest";
import { icc, meanOf, plainMean, sampleDeviation } from "@/lib/stats";
import { check } from "../../external/stat-checks";

/** Digits in which a number agrees with the certified one. */
const digits = (ours: number, certified: number) =>
  ours === certified ? 16 : -Math.log10(Math.abs(ours - certified) / Math.abs(certified));

const alternating = (first: number, low: number, high: number) => [
  first,
  ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
];

// NIST StRD, univariate, NumAcc1 to NumAcc4: the data are given by their construction, mean and deviation are certified. From memory.
const univariate = [
  ["NumAcc1", [10000001, 10000003, 10000002], 10000002, 1, 9],
  ["NumAcc2", alternating(1.2, 1.1, 1.3), 1.2, 0.1, 9],
  ["NumAcc3", alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, 9],
  // 10000000.1 is held to 2e-9 only: the double-precision data themselves have a deviation that agrees to eight digits.
  ["NumAcc4", alternating(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, 8],
] as const;

describe("NIST StRD, univariate", () => {
  test.each(univariate)("%s: certified mean and deviation", (_, values, mean, deviation, least) => {
    expect(digits(meanOf(values) as number, mean)).toBeGreaterThanOrEqual(9);
    expect(digits(sampleDeviation(values) as number, deviation)).toBeGreaterThanOrEqual(least);
    const ours = plainMean({ values });
    expect(digits(ours.estimate, mean)).toBeGreaterThanOrEqual(9);
    expect(digits((ours.se as number) * Math.sqrt(values.length), deviation)).toBeGreaterThanOrEqual(least);
  });
});

describe("NIST StRD, analysis of variance", () => {
  test.each(["anova-nist-sirstv", "anova-nist-atmwtag"])("%s: nine digits of the certified sums of squares, F and deviation", (id) => {
    const { input, expected } = check(id);
    const groups = Object.values(input.groups as Readonly<Record<string, readonly number[]>>);
    const ours = icc({ values: groups.flat(), patient: groups.flatMap((values, g) => values.map(() => g)) });
    const [between, within] = [ours.betweenMeanSquare as number, ours.withinMeanSquare as number];
    expect(digits(between * (groups.length - 1), expected.ss_between as number)).toBeGreaterThanOrEqual(9);
    expect(digits(within * (ours.n - groups.length), expected.ss_within as number)).toBeGreaterThanOrEqual(9);
    expect(digits(between / within, expected.F as number)).toBeGreaterThanOrEqual(9);
    expect(digits(Math.sqrt(within), expected.residual_sd as number)).toBeGreaterThanOrEqual(9);
  });
});
