import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clopperPearson, newcombeDifference, percentFits, riskDifference, riskRatio, wilson, wilsonClustered } from "@/lib/stats";
import { check, checksOf, numbers, type StatCheck, toleranceOf } from "../../external/stat-checks";
import { answerOf, answersOf, expectAsR, labelsOf, numbersOf } from "./r-answers";

function expectLimits(ours: { lower: number; upper: number }, found: StatCheck): void {
  for (const limit of ["lower", "upper"] as const) {
    expect(Math.abs(ours[limit] - Number(found.expected[limit])), limit).toBeLessThanOrEqual(toleranceOf(found, limit));
    if (found.computed) expect(Math.abs(ours[limit] - Number(found.computed[limit])), `${limit} of R`).toBeLessThanOrEqual(1e-8);
  }
}

const single = (found: StatCheck) => typeof found.input.x === "number" && typeof found.input.confidence !== "object";

describe("Wilson", () => {
  test.each(
    checksOf("prop-wilson-")
      .filter(single)
      .map((found) => [found.id, found] as const),
  )("%s, Newcombe 1998 table I", (_, found) => {
    expectLimits(wilson({ x: Number(found.input.x), n: Number(found.input.n) }), found);
  });

  test("R prop.test on a grid, and at 90 and 99 %", () => {
    const grid = check("prop-grid-wilson");
    numbers(grid, "x").forEach((x, i) => {
      const ours = wilson({ x, n: numbers(grid, "n")[i] as number });
      expect(ours.lower).toBeCloseTo((grid.expected.lower as readonly number[])[i] as number, 9);
      expect(ours.upper).toBeCloseTo((grid.expected.upper as readonly number[])[i] as number, 9);
    });
    const levels = check("prop-wilson-90-99");
    numbers(levels, "confidence").forEach((confidence, i) => {
      const ours = wilson({ x: Number(levels.input.x), n: Number(levels.input.n), confidence });
      expect(ours.lower).toBeCloseTo((levels.expected.lower as readonly number[])[i] as number, 9);
      expect(ours.upper).toBeCloseTo((levels.expected.upper as readonly number[])[i] as number, 9);
    });
  });

  const share = fc.integer({ min: 1, max: 5000 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

  test("limits hold the share, lie in 0 to 1, close at the ends, and mirror when events and non-events change places", () => {
    fc.assert(
      fc.property(share, ([x, n]) => {
        for (const method of [wilson, clopperPearson]) {
          const { estimate, lower, upper } = method({ x, n });
          expect(lower).toBeLessThanOrEqual(estimate);
          expect(upper).toBeGreaterThanOrEqual(estimate);
          expect(lower === 0).toBe(x === 0);
          expect(upper === 1).toBe(x === n);
          expect(method({ x: n - x, n }).upper).toBeCloseTo(1 - lower, 10);
        }
      }),
    );
  });

  test("a million cases, and one", () => {
    const ours = wilson({ x: 500_000, n: 1_000_000 });
    expect(ours.upper - ours.lower).toBeCloseTo((2 * 1.959964) / 2000, 7);
    expect(wilson({ x: 1, n: 1 })).toMatchObject({ estimate: 1, upper: 1 });
  });

  test("what shares refuse", () => {
    expect(() => wilson({ x: 0, n: 0 })).toThrow("wilson requires at least one case, received 0");
    expect(() => wilson({ x: 3, n: 2 })).toThrow("wilson requires x of at most n (2), received 3");
    expect(() => wilson({ x: 0.5, n: 2 })).toThrow("wilson requires x to be a whole number of at least 0, received 0.5");
    expect(() => clopperPearson({ x: -1, n: 2 })).toThrow("clopperPearson requires x to be a whole number of at least 0, received -1");
    expect(() => newcombeDifference({ x1: 1, n1: 2, x2: 1, n2: 0 })).toThrow("newcombeDifference requires at least one case, received 0");
  });
});

describe("Clopper–Pearson", () => {
  test.each(checksOf("prop-clopper-pearson-").map((found) => [found.id, found] as const))("%s, Newcombe 1998 table I", (_, found) => {
    expectLimits(clopperPearson({ x: Number(found.input.x), n: Number(found.input.n) }), found);
  });

  test("R binom.test on a grid", () => {
    const grid = check("prop-grid-clopper-pearson");
    numbers(grid, "x").forEach((x, i) => {
      const ours = clopperPearson({ x, n: numbers(grid, "n")[i] as number });
      expect(ours.lower).toBeCloseTo((grid.expected.lower as readonly number[])[i] as number, 9);
      expect(ours.upper).toBeCloseTo((grid.expected.upper as readonly number[])[i] as number, 9);
    });
  });
});

describe("Newcombe's difference", () => {
  test.each(checksOf("propdiff-newcombe10").map((found) => [found.id, found] as const))("%s, Newcombe 1998 table II", (_, found) => {
    const { x1, n1, x2, n2 } = found.input as unknown as { x1: number; n1: number; x2: number; n2: number };
    expectLimits(newcombeDifference({ x1, n1, x2, n2 }), found);
  });
});

describe("shares of rows, clustered by patient (R sandwich and prop.test)", () => {
  test.each(answersOf("means", "share-"))("%s", (_, r) => {
    const ours = wilsonClustered({ event: numbersOf(r, "event"), patient: labelsOf(r, "patient") });
    expectAsR(ours, r, ["estimate", "deff", "nEffective", "lower", "upper"]);
  });

  test("one row a patient: only the t quantile widens it", () => {
    const event = [1, 0, 0, 1, 0, 0, 0, 1, 0, 0];
    const ours = wilsonClustered({ event, patient: event.map((_, i) => i) });
    expect(ours.deff).toBeCloseTo(10 / 9, 12);
    expect(ours.plain).toEqual({ lower: wilson({ x: 3, n: 10 }).lower, upper: wilson({ x: 3, n: 10 }).upper });
    expect(ours.lower as number).toBeLessThan(ours.plain.lower);
  });

  test("no event or only events: as many cases as patients, closed at the end", () => {
    const none = wilsonClustered({ event: [0, 0, 0, 0, 0, 0, 0, 0], patient: [1, 1, 2, 2, 3, 3, 4, 4] });
    expect(none).toMatchObject({ x: 0, n: 8, estimate: 0, lower: 0, deff: null, nEffective: 4 });
    expect(none.upper).toBeCloseTo(wilson({ x: 0, n: 4 }).upper, 14);
    expect(wilsonClustered({ event: [1, 1, 1, 1], patient: [1, 1, 2, 3] })).toMatchObject({ estimate: 1, upper: 1, nEffective: 3 });
  });

  test("equal shares in every patient: never more than n cases", () => {
    const ours = wilsonClustered({ event: [1, 0, 1, 0, 1, 0, 1, 0], patient: [1, 1, 2, 2, 3, 3, 4, 4] });
    expect(ours.deff).toBe(0);
    expect(ours.nEffective).toBeLessThanOrEqual(8);
    expect(ours.lower as number).toBeLessThanOrEqual(wilson({ x: 4, n: 8 }).lower);
  });

  test("a million rows of half a million patients", () => {
    const event = Array.from({ length: 1e6 }, (_, i) => (i % 4 < 2 ? 1 : 0)); // both rows of a patient alike: every second row tells nothing new
    const ours = wilsonClustered({ event, patient: event.map((_, i) => i >> 1) });
    expect(ours.deff).toBeCloseTo(2, 5);
    expect(ours.nEffective / 5e5).toBeCloseTo(1, 4);
  });

  test("two patients: the share alone", () => {
    const ours = wilsonClustered({ event: [1, 0, 0], patient: [1, 1, 2] });
    expect(ours).toMatchObject({ lower: null, upper: null, notes: [{ code: "too-few-for-interval", patients: 2, needed: 3 }] });
    expect(wilsonClustered({ event: [1, 0], patient: [1, 1] }).lower).toBeNull();
  });

  test("what it refuses", () => {
    expect(() => wilsonClustered({ event: [0.5], patient: [1] })).toThrow(
      "wilsonClustered requires events of 0 or 1, received another value at 0",
    );
    expect(() => wilsonClustered({ event: [], patient: [] })).toThrow("wilsonClustered requires at least one row, received 0");
    expect(() => wilsonClustered({ event: [1], patient: [] })).toThrow("wilsonClustered requires patient as long as event (1), received 0");
  });
});

describe("two shares (clubSandwich; Newcombe on n*)", () => {
  test.each(answersOf("means", "risk-ratio-"))("%s", (_, r) => {
    const ours = riskRatio({ event: numbersOf(r, "values"), group: labelsOf(r, "group"), patient: labelsOf(r, "patient") });
    expectAsR(ours, r, ["estimate", "seLog", "df", "lower", "upper", "statistic", "p"]);
  });

  test("a difference with patients in both groups is CR2, without it the hybrid", () => {
    const shared = answerOf("means", "risk-difference-bacteria-shared");
    const input = (r: typeof shared) => ({ event: numbersOf(r, "values"), group: labelsOf(r, "group"), patient: labelsOf(r, "patient") });
    expectAsR(riskDifference(input(shared)), shared, ["estimate", "se", "df", "lower", "upper", "statistic", "p"]);
    const apart = answerOf("means", "risk-difference-bacteria");
    const ours = riskDifference({ ...input(apart), between: ["placebo", "drug"] });
    expectAsR(ours, apart, ["estimate", "lower", "upper"]);
    expect(ours.method).toContain("Newcombe");
  });

  test("a group without an event has a difference and no ratio", () => {
    const input = { event: [0, 0, 0, 1, 0, 1], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6] };
    expect(riskRatio(input)).toMatchObject({
      estimate: null,
      upper: null,
      notes: [{ code: "not-estimable", because: "a group has no event" }],
    });
    const difference = riskDifference(input);
    expect(difference.estimate).toBeCloseTo(-2 / 3, 12);
    expect(difference.lower as number).toBeGreaterThanOrEqual(-1);
  });

  test("two patients on a side: no interval", () => {
    const input = { event: [0, 1, 1, 0, 1], group: [1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5] };
    const note = [{ code: "too-few-for-interval", patients: 2, needed: 3 }];
    expect(riskRatio(input)).toMatchObject({ lower: null, se: null, notes: note });
    expect(riskRatio(input).estimate).toBeCloseTo(3 / 4, 12);
    expect(riskDifference(input)).toMatchObject({ lower: null, notes: note });
  });

  test("what they refuse", () => {
    const input = { event: [0, 1], group: [1, 1], patient: [1, 2] };
    expect(() => riskRatio(input)).toThrow("riskRatio requires two groups, received 1");
    expect(() => riskDifference(input)).toThrow("riskDifference requires two groups, received 1");
    expect(() => riskDifference({ ...input, group: [1] })).toThrow("riskDifference requires group as long as event (2), received 1");
    expect(() => riskRatio({ ...input, event: [2, 1] })).toThrow("riskRatio requires events of 0 or 1, received another value at 0");
  });
});

describe("a printed percentage beside its counts", () => {
  test("98 of 140 printed as 72 %: 101 of 140, or 98 of 136 or 137", () => {
    expect(percentFits({ x: 98, n: 140, printed: 72, digits: 0 })).toMatchObject({
      fits: false,
      numerators: [101],
      denominators: [136, 137],
    });
  });
  test.each([
    [1, 8, 12.5, 1],
    [1, 8, 13, 0],
    [1, 8, 12, 0],
    [0, 33, 0, 0],
    [28, 16, 175, 0],
  ])("%i of %i is %d %: a half goes either way, and events may be more than cases", (x, n, printed, digits) => {
    expect(percentFits({ x, n, printed, digits }).fits).toBe(true);
  });
  test("every numerator that prints so, by trying each", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.integer({ min: 0, max: 1000 }), fc.constantFrom(0, 1), (n, tenths, digits) => {
        const printed = digits === 0 ? Math.round(tenths / 10) : tenths / 10;
        const tried = Array.from({ length: n + 1 }, (_, x) => x).filter(
          (x) => Math.abs((100 * x) / n - printed) <= 0.5 * 10 ** -digits + 1e-9,
        );
        expect(percentFits({ x: 0, n, printed, digits }).numerators.filter((x) => x <= n)).toEqual(tried);
      }),
    );
  });
  test.each([
    [{ x: -1, n: 10, printed: 5, digits: 0 }, "percentFits requires x to be a whole number of at least 0, received -1"],
    [{ x: 1, n: 0, printed: 5, digits: 0 }, "percentFits requires n to be a whole number of at least 1, received 0"],
    [{ x: 1, n: 10, printed: -5, digits: 0 }, "percentFits requires a printed percentage of at least 0, received -5"],
    [{ x: 1, n: 10, printed: 5, digits: 7 }, "percentFits requires digits of at most 6, received 7"],
  ])("%j is refused", (input, message) => expect(() => percentFits(input)).toThrow(message));
});
