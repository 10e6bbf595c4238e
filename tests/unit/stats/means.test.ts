import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cr2Mean, patientMean, plainMean, ratioOfSums, sampleDeviation } from "@/lib/stats";
import { check, numbers, toleranceOf } from "../../external/stat-checks";
import { answerOf, answersOf, expectAsR, labelsOf, numbersOf } from "./r-answers";

const fields = ["estimate", "se", "df", "lower", "upper"] as const;
const finite = { noNaN: true, noDefaultInfinity: true } as const;

describe("one mean, clustered (clubSandwich on public data sets)", () => {
  test.each(answersOf("means", "mean-"))("%s", (_, r) => {
    expectAsR(cr2Mean({ values: numbersOf(r, "values"), patient: labelsOf(r, "patient") }), r, fields);
  });

  test.each(["cluster-mean-healing-index", "cluster-proportion-complication"])("%s", (id) => {
    const found = check(id);
    const ours = cr2Mean({ values: numbers(found, String(found.input.y)), patient: numbers(found, String(found.input.cluster)) });
    expect(Math.abs(ours.estimate - Number(found.expected.mean))).toBeLessThan(toleranceOf(found, "mean"));
    expect(Math.abs((ours.se ?? 0) - Number(found.expected.se_cr2))).toBeLessThan(toleranceOf(found, "se_cr2"));
    expect(Math.abs((ours.df ?? 0) - Number(found.expected.cr2_df_satterthwaite))).toBeLessThan(1e-8);
    expect([ours.n, ours.patients]).toEqual([found.expected.N, found.expected.G]);
  });

  test("one value a patient: SD/√n on n − 1 df, by the same formula", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1e6, max: 1e6, ...finite }), { minLength: 3, maxLength: 40 }), (values) => {
        const { se, df } = cr2Mean({ values, patient: values.map((_, i) => i) });
        expect(df).toBeCloseTo(values.length - 1, 8);
        const spread = (sampleDeviation(values) ?? 0) / Math.sqrt(values.length);
        expect(Math.abs((se ?? 0) - spread)).toBeLessThanOrEqual(1e-9 * (spread + Math.max(...values.map(Math.abs)) * 1e-6));
      }),
    );
  });

  test("adding a constant moves the mean and nothing else; naming patients otherwise changes nothing", () => {
    const r = answerOf("means", "mean-chick-uneven");
    const [values, patient] = [numbersOf(r, "values"), labelsOf(r, "patient")];
    const before = cr2Mean({ values, patient });
    const after = cr2Mean({ values: values.map((value) => value + 1e9), patient: patient.map((label) => `p${label}`) });
    expect(after.estimate).toBeCloseTo(before.estimate + 1e9, 6);
    expect(after.se).toBeCloseTo(before.se as number, 9);
    expect(after.df).toBe(before.df);
  });

  test("sizes from 1e-300 to 1e15 keep their digits, and 1e6 rows are no trouble", () => {
    const r = answerOf("means", "mean-chick-uneven");
    const [values, patient] = [numbersOf(r, "values"), labelsOf(r, "patient")];
    for (const size of [1e-300, 1e15]) {
      const ours = cr2Mean({ values: values.map((value) => value * size), patient });
      expect((ours.se as number) / size).toBeCloseTo(Number(r.se), 8);
    }
    const many = Array.from({ length: 1e6 }, (_, i) => i % 10);
    const ours = cr2Mean({ values: many, patient: many.map((_, i) => i >> 1) });
    expect(ours.estimate).toBeCloseTo(4.5, 10);
    expect(ours.patients).toBe(5e5);
  });

  test("equal values: no spread, said so", () => {
    const ours = cr2Mean({ values: [0.1, 0.1, 0.1, 0.1], patient: [1, 1, 2, 3] });
    expect(ours).toMatchObject({ estimate: 0.1, se: 0, lower: 0.1, upper: 0.1 });
    expect(ours.notes.map(({ code }) => code)).toContain("constant-values");
  });

  test("fewer than three patients: the value, no interval, and the reason", () => {
    const ours = cr2Mean({ values: [30, 34, 41], patient: ["a", "a", "b"] });
    expect(ours).toMatchObject({ estimate: 35, se: null, df: null, lower: null, upper: null, patients: 2 });
    expect(ours.notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
    expect(cr2Mean({ values: [30], patient: ["a"] }).lower).toBeNull();
  });

  test("below four df the note says that the patients' mean goes first", () => {
    const r = answerOf("means", "mean-chick-three");
    const ours = cr2Mean({ values: numbersOf(r, "values"), patient: labelsOf(r, "patient") });
    expect(ours.notes.map(({ code }) => code)).toEqual(["clustered", "few-patients"]);
  });

  test("what it refuses", () => {
    expect(() => cr2Mean({ values: [], patient: [] })).toThrow("cr2Mean requires at least one value, received 0");
    expect(() => cr2Mean({ values: [1, 2], patient: [1] })).toThrow("cr2Mean requires patient as long as values (2), received 1");
    expect(() => cr2Mean({ values: [1, Number.NaN], patient: [1, 2] })).toThrow(
      "cr2Mean requires finite numbers in values, received NaN at 1",
    );
    expect(() => cr2Mean({ values: [1, 2], patient: [1, 2], confidence: 95 })).toThrow(
      "cr2Mean requires a confidence between 0 and 1, received 95",
    );
  });
});

describe("the mean of patient means and the plain mean (R t.test)", () => {
  test("plain", () => {
    const r = answerOf("means", "plain-mean-chick-uneven");
    const ours = plainMean({ values: numbersOf(r, "values"), patient: labelsOf(r, "patient") });
    expectAsR(ours, r, fields);
    expect([ours.n, ours.patients]).toEqual([29, 4]);
  });

  test("of patients", () => {
    const r = answerOf("means", "patient-mean-chick-uneven");
    const ours = patientMean({ values: numbersOf(r, "values"), patient: labelsOf(r, "patient") });
    expectAsR(ours, r, fields);
    expect([ours.n, ours.patients]).toEqual([29, 4]);
  });

  test("one value a patient: all three means have one interval", () => {
    const r = answerOf("means", "mean-singletons-women");
    const [values, patient] = [numbersOf(r, "values"), labelsOf(r, "patient")];
    for (const ours of [cr2Mean({ values, patient }), patientMean({ values, patient }), plainMean({ values })]) expectAsR(ours, r, fields);
  });

  test("patients whose bones agree keep that very value, however many they are", () => {
    const ours = patientMean({ values: [0.1, 0.1, 0.1, 0.1, 0.1], patient: [1, 1, 1, 2, 3] });
    expect(ours).toMatchObject({ estimate: 0.1, se: 0 });
    expect(ours.notes).toEqual([{ code: "constant-values" }]);
  });

  test("too few patients, and what is refused", () => {
    expect(plainMean({ values: [1, 2, 3, 4], patient: [1, 1, 2, 2] })).toMatchObject({ estimate: 2.5, se: null, upper: null });
    expect(patientMean({ values: [1, 2, 3, 4], patient: [1, 1, 2, 2] })).toMatchObject({ estimate: 2.5, se: null, upper: null });
    expect(() => plainMean({ values: [] })).toThrow("plainMean requires at least one value, received 0");
    expect(() => patientMean({ values: [1, Infinity], patient: [1, 2] })).toThrow(
      "patientMean requires finite numbers in values, received Infinity at 1",
    );
  });
});

describe("the ratio of sums (sandwich on weighted least squares through the origin)", () => {
  test.each(answersOf("means", "ratio-"))("%s", (_, r) => {
    const ours = ratioOfSums({
      numerator: numbersOf(r, "numerator"),
      denominator: numbersOf(r, "denominator"),
      patient: labelsOf(r, "patient"),
    });
    expectAsR(ours, r, fields);
  });

  test("equal denominators: the ratio is the mean of patients, its error that of a mean", () => {
    const values = [30, 34, 41, 36, 52, 28];
    const patient = values.map((_, i) => i);
    const ours = ratioOfSums({ numerator: values, denominator: values.map(() => 2), patient });
    const mean = plainMean({ values });
    expect(ours.estimate).toBeCloseTo(mean.estimate / 2, 12);
    expect(ours.se).toBeCloseTo((mean.se as number) / 2, 12);
    expect(ours.upper).toBeCloseTo((mean.upper as number) / 2, 10);
  });

  test("five patients have an error and no interval, one has neither", () => {
    const five = ratioOfSums({ numerator: [10, 20, 30, 44, 5], denominator: [1, 2, 3, 4, 1], patient: [1, 2, 3, 4, 5] });
    expect(five.se).toBeGreaterThan(0);
    expect(five).toMatchObject({ df: 4, lower: null, upper: null, notes: [{ code: "too-few-for-interval", patients: 5, needed: 6 }] });
    expect(ratioOfSums({ numerator: [10, 20], denominator: [1, 2], patient: [1, 1] })).toMatchObject({ estimate: 10, se: null });
  });

  test("sizes far from one", () => {
    const small = { numerator: [1e-300, 2e-300, 4e-300, 1e-300, 2e-300, 3e-300], patient: [1, 2, 3, 4, 5, 6] };
    const ours = ratioOfSums({ ...small, denominator: [1e15, 1e15, 2e15, 1e15, 1e15, 1e15] });
    const plain = ratioOfSums({ ...small, numerator: [1, 2, 4, 1, 2, 3], denominator: [1, 1, 2, 1, 1, 1] });
    expect(ours.estimate * 1e308 * 1e7).toBeCloseTo(plain.estimate, 6);
  });

  test("what it refuses", () => {
    expect(() => ratioOfSums({ numerator: [1, 2], denominator: [1], patient: [1, 2] })).toThrow(
      "ratioOfSums requires denominator as long as values (2), received 1",
    );
    expect(() => ratioOfSums({ numerator: [1, 2], denominator: [1, -2], patient: [1, 2] })).toThrow(
      "ratioOfSums requires a denominator of at least zero, received -2 at 1",
    );
    expect(() => ratioOfSums({ numerator: [1, 2], denominator: [0, 0], patient: [1, 2] })).toThrow(
      "ratioOfSums requires a denominator that sums above zero, received 0",
    );
  });
});
