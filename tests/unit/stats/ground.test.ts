import { describe, expect, test } from "vitest";
import { meanOf, type NoteCode, noteText, quantile, quantileSorted, sampleDeviation, seededRandom, sortedCopy } from "@/lib/stats";
import { countPatients, indexPatients } from "@/lib/stats/cluster/patients";
import { requireFinite } from "@/lib/stats/require";
import { shuffleInPlace } from "@/lib/stats/resample/shuffle";
import { check, numbers } from "../../external/stat-checks";

describe("quantiles (R quantile)", () => {
  test.each(["quantile-7-6", "quantile-even-ties"])("%s, types 7 and 6", (id) => {
    const found = check(id);
    const values = Object.freeze(numbers(found, "x"));
    for (const type of [7, 6] as const) {
      numbers(found, "p").forEach((p, i) => {
        const theirs = (found.expected[`type${type}`] as readonly number[])[i] as number;
        expect(quantile({ values, p, type }).estimate, `type ${type} at ${p}`).toBeCloseTo(theirs, 10);
      });
    }
  });

  test("the ends are the least and the greatest, one value is every quantile", () => {
    for (const type of [6, 7] as const) {
      expect(quantile({ values: [3, 1, 2], p: 0, type }).estimate).toBe(1);
      expect(quantile({ values: [3, 1, 2], p: 1, type }).estimate).toBe(3);
      expect(quantile({ values: [5], p: 0.3, type }).estimate).toBe(5);
      expect(quantileSorted([5], 0.9, type)).toBe(5);
    }
  });

  test("what it refuses", () => {
    expect(() => quantile({ values: [], p: 0.5 })).toThrow("quantile requires at least one value, received 0");
    expect(() => quantile({ values: [1], p: 2 })).toThrow("quantile requires p from 0 to 1, received 2");
    expect(() => quantile({ values: [1, Infinity], p: 0.5 })).toThrow("quantile requires finite numbers in values, received Infinity at 1");
    expect(() => quantile({ values: [1], p: 0.5, type: 5 as 6 })).toThrow("quantile requires type 6 or 7, received 5");
  });
});

describe("mean and sample deviation", () => {
  test("n − 1, null without spread to speak of, sizes far from one", () => {
    expect(sampleDeviation([1, 2, 3, 4])).toBeCloseTo(Math.sqrt(5 / 3), 14);
    expect([meanOf([]), sampleDeviation([]), sampleDeviation([3])]).toEqual([null, null, null]);
    expect(meanOf([1, 2, 6])).toBe(3);
    expect((sampleDeviation([1e-300, 2e-300, 3e-300]) ?? 0) * 1e300).toBeCloseTo(1, 12);
    expect((sampleDeviation([1e300, 2e300, 3e300]) ?? 0) / 1e300).toBeCloseTo(1, 12);
    expect(sampleDeviation([1e15, 1e15 + 1, 1e15 + 2])).toBeCloseTo(1, 12);
  });

  test("sorting leaves the input alone", () => {
    const values = Object.freeze([3, 1, 2]);
    expect(sortedCopy(values)).toEqual([1, 2, 3]);
    expect(values).toEqual([3, 1, 2]);
  });
});

describe("seeded chance", () => {
  test("the same seed, the same numbers; another seed, others, beyond 32 bits too", () => {
    const draw = (seed: number) => Array.from({ length: 5 }, seededRandom(seed).bits);
    expect(draw(1)).toEqual(draw(1));
    for (const other of [0, 2, -1, 2 ** 32 + 1, 2 ** 40 + 1]) expect(draw(other)).not.toEqual(draw(1));
  });

  // Known answers: the published algorithm from state 1, 2, 3, 4 is not reachable through a seed, so evenness is tested instead.
  test("each of ten numbers comes up a tenth of the time (χ² of 9 df below its 99.99 % point, 33.7)", () => {
    const random = seededRandom(20);
    const counts = new Array<number>(10).fill(0);
    for (let i = 0; i < 100_000; i++) {
      const drawn = random.below(10);
      counts[drawn] = (counts[drawn] as number) + 1;
    }
    expect(counts.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0)).toBeLessThan(33.7);
  });

  test("neighbouring draws are unrelated, and so are neighbouring seeds", () => {
    const random = seededRandom(3);
    const draws = Array.from({ length: 50_001 }, random.uniform);
    const seeds = Array.from({ length: 50_001 }, (_, seed) => seededRandom(seed).uniform());
    for (const series of [draws, seeds]) {
      let product = 0;
      for (let i = 0; i < 50_000; i++) product += ((series[i] as number) - 0.5) * ((series[i + 1] as number) - 0.5);
      expect(Math.abs((product / 50_000) * 12)).toBeLessThan(4 / Math.sqrt(50_000)); // four standard errors of a correlation of zero
    }
  });

  test("a shuffle takes each of the six orders of three a sixth of the time, and keeps to its part", () => {
    const random = seededRandom(9);
    const counts = new Map<string, number>();
    for (let i = 0; i < 60_000; i++) {
      const items = [7, 1, 2, 3, 8];
      shuffleInPlace(items, random, 1, 4);
      counts.set(items.join(""), (counts.get(items.join("")) ?? 0) + 1);
    }
    expect([...counts.keys()].every((order) => order.startsWith("7") && order.endsWith("8"))).toBe(true);
    expect(counts.size).toBe(6);
    expect([...counts.values()].reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0)).toBeLessThan(25.7); // χ² of 5 df, 99.99 %
  });

  test("a seed is a whole number", () => {
    expect(() => seededRandom(0.5)).toThrow("seededRandom requires a whole number as seed, received 0.5");
  });
});

describe("notes", () => {
  test("wording comes from the facts", () => {
    expect(noteText({ code: "few-patients", df: 2.46 })).toContain("2.5 degrees of freedom");
    expect(noteText({ code: "too-few-for-interval", patients: 2, needed: 3 })).toBe("Too few patients for an interval (2, 3 needed).");
    expect(noteText({ code: "shared-denominator" })).toBe(
      "An index falls with gain by arithmetic because some days don’t depend on gain. Compare days at equal gain.",
    );
  });

  test("every code of the contract has a sentence, with and without facts", () => {
    const codes: readonly NoteCode[] = [
      "too-few-for-interval",
      "few-patients",
      "clustered",
      "bilateral-patients-differ",
      "shared-denominator",
      "index-depends-on-gain",
      "heavily-censored",
      "fallback-used",
      "plain-limit",
      "few-at-risk",
      "known-later",
      "early-stops-listed",
      "technique-is-surgeon",
    ];
    for (const code of codes) expect(noteText({ code })).toMatch(/^[A-Z].*\.$/s);
  });
});

test("what isn't a number is described, never quoted", () => {
  const named = ["Somebody"] as unknown as number[];
  expect(() => requireFinite("quantile", "values", named)).toThrow(
    "quantile requires finite numbers in values, received a value of type string at 0",
  );
  expect(() => requireFinite("quantile", "values", [null] as unknown as number[])).toThrow("received null at 0");
});

describe("numbering patients", () => {
  const byFirstRow = (labels: readonly (string | number)[]) => {
    const order = [...new Set(labels)];
    return labels.map((label) => order.indexOf(label));
  };
  test.each([
    ["whole numbers, as a registry has them", [7, 3, 7, 0, 3, 12]],
    ["numbers far above the rows", [5_000_000, 3, 5_000_000]],
    ["fractions and numbers below zero", [0.5, -1, 0.5, 2]],
    ["text, and a number that looks like it", ["1", 1, "b", "1"]],
  ])("%s: in the order of their first row", (_, labels: readonly (string | number)[]) => {
    const { codes, count, rows } = indexPatients(labels);
    expect(Array.from(codes)).toEqual(byFirstRow(labels));
    expect([count, countPatients(labels)]).toEqual([new Set(labels).size, new Set(labels).size]);
    expect(Array.from(rows)).toEqual(Array.from({ length: count }, (_, code) => Array.from(codes).filter((own) => own === code).length));
  });
});
