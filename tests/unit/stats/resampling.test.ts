import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bootstrapReplicates, patientBootstrap, percentileInterval, permutationDifference, quantile, signFlip } from "@/lib/stats";
import { countArrangements, everyArrangement } from "@/lib/stats/resample/arrangements";
import { count, newTally, permutationP } from "@/lib/stats/resample/permutation-p";
import { meanOfDraws, quantileOfDraws } from "@/lib/stats/resample/row-statistics";
import { answerOf, answersOf, expectAsR, labelsOf, numbersOf } from "./r-answers";

const rowsOf = (r: ReturnType<typeof answerOf>) => ({
  values: numbersOf(r, "values"),
  group: labelsOf(r, "group"),
  patient: labelsOf(r, "patient"),
});

describe("exchanging whole patients (all arrangements in R, studentised by clubSandwich)", () => {
  test.each(answersOf("means", "exchange-"))("%s", (_, r) => {
    const ours = permutationDifference({ ...rowsOf(r), seed: 1 });
    expect(Math.abs(ours.statistic as number)).toBeCloseTo(Number(r.statistic), 8);
    expect(ours.exhaustive).toBe(true);
    expect(ours.arrangements).toBe(r.arrangements);
    expect(ours.smallestP).toBeCloseTo(Number(r.smallestP), 10);
    expect(ours.p).toBeCloseTo(Number(r.p), 10);
  });

  test("drawn arrangements come near all of them, and the same seed gives the same p", () => {
    const values = Array.from({ length: 20 }, (_, i) => (i * 37) % 23);
    const rows = { values, group: values.map((_, i) => (i % 2 ? "a" : "b")), patient: values.map((_, i) => i) };
    const [one, again, other] = [1, 1, 2].map((seed) => permutationDifference({ ...rows, seed }));
    expect(one).toMatchObject({ exhaustive: false, arrangements: 9999, smallestP: 0.0001 });
    expect(again?.p).toBe(one?.p);
    expect(Math.abs((other?.p ?? 0) - (one?.p ?? 0))).toBeLessThan(4 * Math.sqrt(0.5 / 9999)); // two draws, four standard errors at p = ½
  });

  test("too few patients to reach 0.05: no p, the interval is to be read", () => {
    const ours = permutationDifference({ values: [1, 2, 3, 7, 8, 9], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6], seed: 1 });
    expect(ours).toMatchObject({ p: null, smallestP: 0.1, arrangements: 20, notes: [{ code: "smallest-p-above-0.05", smallest: 0.1 }] });
  });

  test("patients of unlike numbers of values never change places", () => {
    const ours = permutationDifference({
      values: [1, 2, 3, 4, 5, 6, 7, 8, 9],
      group: [1, 1, 1, 1, 1, 1, 2, 2, 2],
      patient: [1, 2, 2, 3, 3, 3, 4, 5, 6],
      seed: 1,
    });
    expect(ours.arrangements).toBe(4); // of one value: patient 1 with 4, 5 and 6
  });

  test("equal values: every arrangement alike", () => {
    const rows = { values: Array(8).fill(5), group: [1, 1, 1, 1, 2, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6, 7, 8] };
    expect(permutationDifference({ ...rows, seed: 1 })).toMatchObject({ statistic: 0, p: null, smallestP: 1 });
    const apart = permutationDifference({ ...rows, values: [1, 1, 1, 1, 2, 2, 2, 2], seed: 1 });
    expect(apart.statistic).toBeNull();
    expect(apart.p).toBeCloseTo(2 / 70, 12);
  });

  test("what it refuses", () => {
    const rows = { values: [1, 2, 3], group: [1, 2, 2], patient: [1, 1, 2] };
    expect(() => permutationDifference({ ...rows, seed: 1 })).toThrow(
      "permutationDifference requires each patient in one group, received 1 in both",
    );
    expect(() => permutationDifference({ ...rows, group: [1, 1, 1], seed: 1 })).toThrow(
      "permutationDifference requires two groups, received 1",
    );
    const few = permutationDifference({ ...rows, patient: [1, 2, 3], seed: 1 });
    expect(few).toMatchObject({ p: null, notes: [{ code: "too-few-for-interval", patients: 1, needed: 3 }] });
  });
});

describe("turning signs within patients", () => {
  test("Student's sleep data, all 1024 patterns (R)", () => {
    const r = answerOf("means", "signs-sleep");
    const ours = signFlip({ ...rowsOf(r), seed: 1 });
    expectAsR(ours, r, ["statistic", "p", "smallestP", "arrangements"]);
  });

  // Fisher 1935, section 21: 863 of 32 768 patterns reach the sum of Darwin's differences on one side, so p = 1726/32768 (from memory; R agrees).
  test("Darwin's plants: drawn patterns come within four standard errors of Fisher's enumeration", () => {
    const r = answerOf("means", "signs-darwin");
    const exact = 1726 / 32768;
    expect(Number(r.p)).toBeCloseTo(exact, 12);
    const differences = numbersOf(r, "differences");
    const values = differences.flatMap((d) => [d, 0]);
    const ours = signFlip({ values, group: values.map((_, i) => i % 2), patient: values.map((_, i) => i >> 1), seed: 5 });
    expect(ours.exhaustive).toBe(false);
    expect(Math.abs((ours.p as number) - exact)).toBeLessThan(4 * Math.sqrt((exact * (1 - exact)) / 9999));
  });

  test("three pairs can't reach 0.05; two are too few; none is refused", () => {
    const rows = { values: [5, 3, 6, 3, 7, 3], group: [1, 2, 1, 2, 1, 2], patient: [1, 1, 2, 2, 3, 3] };
    expect(signFlip({ ...rows, seed: 1 })).toMatchObject({ p: null, smallestP: 0.25, arrangements: 8 });
    expect(signFlip({ ...rows, patient: [1, 1, 2, 2, 3, 4], seed: 1 }).notes).toEqual([
      { code: "too-few-for-interval", patients: 2, needed: 3 },
    ]);
    expect(() => signFlip({ ...rows, patient: [1, 2, 3, 4, 5, 6], seed: 1 })).toThrow(
      "signFlip requires patients in both groups, received 0",
    );
  });

  test("equal differences have no statistic but still a p", () => {
    const values = Array.from({ length: 12 }, (_, i) => (i % 2 ? 1 : 3));
    const ours = signFlip({ values, group: values.map((_, i) => i % 2), patient: values.map((_, i) => i >> 1), seed: 1 });
    expect(ours).toMatchObject({ statistic: null, p: 2 / 64, smallestP: 2 / 64 });
  });
});

describe("arrangements", () => {
  test("every one once, as many as counted", () => {
    const labels = Int8Array.from([1, 0, 1, 0, 0, 1, 1]);
    const strata = [
      { start: 0, end: 4 },
      { start: 4, end: 7 },
    ];
    const seen = new Set<string>();
    everyArrangement(labels, strata, (arranged) => seen.add(arranged.join("")));
    expect(countArrangements(labels, strata, 100)).toBe(18);
    expect(seen.size).toBe(18);
    expect(Array.from(labels)).toEqual([1, 0, 1, 0, 0, 1, 1]);
    expect(countArrangements(labels, strata, 17)).toBe(Infinity);
  });

  test("drawn: (b + 1)/(B + 1); all: their share", () => {
    const tally = newTally(2);
    for (const size of [1, 2, 3, 3]) count(tally, size);
    expect(permutationP(tally, false)).toMatchObject({ p: null, smallestP: 0.2 });
    expect(permutationP({ ...tally, total: 99, reached: 3 }, false).p).toBeCloseTo(0.04, 12);
    expect(permutationP({ ...tally, total: 100, times: 2, reached: 5 }, true)).toMatchObject({ p: 0.05, smallestP: 0.02 });
  });
});

describe("bootstrap of whole patients", () => {
  const patient = fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 1, maxLength: 25 });

  test("statistics of a draw are those of the rows written out", () => {
    fc.assert(
      fc.property(patient, fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 1, max: 999 }), (labels, p, salt) => {
        const values = labels.map((_, i) => ((i + 1) * salt) % 101);
        const order = [...new Set(labels)];
        const timesDrawn = Int32Array.from(order, (_, c) => (c === 0 ? 2 : (salt + c) % 3));
        const rows = labels.flatMap((label, i) => Array(timesDrawn[order.indexOf(label)]).fill(values[i] as number) as number[]);
        expect(quantileOfDraws(values, labels, p)(timesDrawn)).toBeCloseTo(quantile({ values: rows, p }).estimate, 9);
        expect(meanOfDraws(values, labels)(timesDrawn)).toBeCloseTo(rows.reduce((sum, value) => sum + value, 0) / rows.length, 9);
      }),
    );
  });

  test("the law of five patients, against its enumeration in R", () => {
    const r = answerOf("means", "bootstrap-five");
    const values = numbersOf(r, "values");
    const replicates = bootstrapReplicates({
      patients: values.length,
      repeats: 200_000,
      seed: 11,
      statistic: meanOfDraws(
        values,
        values.map((_, i) => i),
      ),
    });
    const { se } = percentileInterval(replicates, 0.95);
    const exact = Number(r.se);
    expect(Math.abs((se as number) - exact)).toBeLessThan((4 * exact) / Math.sqrt(2 * 200_000));
  });

  test("limits are order statistics of the replicates: (B + 1)p", () => {
    const sorted = { values: Float64Array.from({ length: 999 }, (_, i) => i + 1), failed: 0 };
    const { lower, upper } = percentileInterval(sorted, 0.95);
    expect(lower).toBeCloseTo(25, 9);
    expect(upper).toBeCloseTo(975, 9);
    expect(percentileInterval({ ...sorted, failed: 60 }, 0.95)).toEqual({ se: null, lower: null, upper: null });
    expect(percentileInterval({ values: new Float64Array(1), failed: 0 }, 0.95).lower).toBeNull();
  });

  test("twenty patients: an interval, the same for the same seed; nineteen: none", () => {
    const values = Array.from({ length: 40 }, (_, i) => (i * 17) % 29);
    const labels = values.map((_, i) => i >> 1);
    const mean = patientBootstrap({ values, patient: labels, seed: 3 });
    expect(mean.lower as number).toBeLessThan(mean.estimate);
    expect(mean.upper as number).toBeGreaterThan(mean.estimate);
    expect(patientBootstrap({ values, patient: labels, seed: 3 })).toEqual(mean);
    const sums = Array.from({ length: 20 }, (_, c) => (values[2 * c] as number) + (values[2 * c + 1] as number));
    const centre = sums.reduce((sum, value) => sum + value, 0) / 20;
    const exact = Math.sqrt(sums.reduce((sum, value) => sum + (value - centre) ** 2, 0) / 20 / 20) / 2; // closed form for equal numbers of values
    expect(Math.abs((mean.se as number) - exact)).toBeLessThan((4 * exact) / Math.sqrt(2 * 9999));
    const few = patientBootstrap({ values: values.slice(2), patient: labels.slice(2), statistic: "quantile", seed: 3 });
    expect(few).toMatchObject({ lower: null, upper: null, notes: [{ code: "too-few-for-interval", patients: 19, needed: 20 }] });
    expect(few.estimate).toBe(quantile({ values: values.slice(2), p: 0.5 }).estimate);
  });

  test("equal values: a point, said so", () => {
    const flat = patientBootstrap({ values: Array(20).fill(0.1), patient: Array.from({ length: 20 }, (_, i) => i), seed: 1 });
    expect(flat).toMatchObject({ estimate: 0.1, se: 0, lower: 0.1, upper: 0.1, notes: [{ code: "constant-values" }] });
  });

  test("resamples without a value are counted, not hidden", () => {
    const { values, failed } = bootstrapReplicates({
      patients: 2,
      repeats: 1000,
      seed: 1,
      statistic: (drawn) => (drawn[0] === 0 ? null : 1),
    });
    expect(values.length + failed).toBe(1000);
    expect(Math.abs(failed - 250)).toBeLessThan(4 * Math.sqrt(1000 * 0.25 * 0.75));
  });

  test("what it refuses", () => {
    expect(() => patientBootstrap({ values: [1], patient: [1], p: 2, seed: 1 })).toThrow(
      "patientBootstrap requires p from 0 to 1, received 2",
    );
    expect(() => bootstrapReplicates({ patients: 0, repeats: 1, seed: 1, statistic: () => 1 })).toThrow(
      "bootstrapReplicates requires patients to be a whole number of at least 1, received 0",
    );
    const twenty = Array.from({ length: 20 }, (_, i) => i);
    expect(() => patientBootstrap({ values: twenty, patient: twenty, seed: 0.5 })).toThrow(
      "seededRandom requires a whole number as seed, received 0.5",
    );
    expect(() => patientBootstrap({ values: twenty, patient: twenty, repeats: 0, seed: 1 })).toThrow(
      "requires repeats to be a whole number of at least 1",
    );
  });
});
