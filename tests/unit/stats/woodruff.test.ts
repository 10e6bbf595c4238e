import { describe, expect, test } from "vitest";
import { estimate, medianInterval, patientBootstrap, seededRandom, woodruffInterval } from "@/lib/stats";
import { answersOf, expectAsR, labelsOf, numbersOf } from "./r-answers";

/** Two values a patient, alike within a patient, skewed. */
function twoEach(patients: number) {
  const { uniform } = seededRandom(11);
  const own = Array.from({ length: patients }, () => -Math.log(1 - uniform()));
  return {
    values: [...own, ...own].map((value) => 20 + 10 * value - 5 * Math.log(1 - uniform())),
    patient: [...own, ...own].map((_, i) => i % patients),
  };
}

describe("Woodruff's interval (R quantile, sandwich and prop.test)", () => {
  test.each(answersOf("means", "woodruff-"))("%s", (_, r) => {
    const ours = woodruffInterval({ values: numbersOf(r, "values"), patient: labelsOf(r, "patient") });
    expectAsR(ours, r, ["estimate", "nEffective", "lower", "upper"]);
  });

  test.each([0.25, 0.5, 0.75])("of 600 patients at %d it says what resampling says, within a tenth of its width", (p) => {
    const rows = twoEach(600);
    const ours = woodruffInterval({ ...rows, p });
    const drawn = patientBootstrap({ ...rows, p, statistic: "quantile", seed: 1 });
    const width = (drawn.upper as number) - (drawn.lower as number);
    expect(ours.estimate).toBe(drawn.estimate);
    expect(Math.abs((ours.lower as number) - (drawn.lower as number)) / width).toBeLessThan(0.1);
    expect(Math.abs((ours.upper as number) - (drawn.upper as number)) / width).toBeLessThan(0.1);
  });

  test("below twenty patients there is none", () => {
    const { lower, upper, notes } = woodruffInterval(twoEach(19));
    expect([lower, upper]).toEqual([null, null]);
    expect(notes).toEqual([{ code: "too-few-for-interval", patients: 19, needed: 20 }]);
  });

  test("values that don't differ have an interval without width", () => {
    const patient = Array.from({ length: 30 }, (_, i) => i);
    expect(woodruffInterval({ values: patient.map(() => 7), patient })).toMatchObject({ estimate: 7, lower: 7, upper: 7 });
  });

  test("what it refuses", () => {
    expect(() => woodruffInterval({ values: [], patient: [] })).toThrow(RangeError);
    expect(() => woodruffInterval({ values: [1], patient: [1], p: 2 })).toThrow("woodruffInterval requires p from 0 to 1, received 2");
    expect(() => woodruffInterval({ values: [Number.NaN], patient: [1] })).toThrow(TypeError);
  });
});

describe("the median of very many patients", () => {
  const interval = (rows: ReturnType<typeof twoEach>) => estimate({ situation: "median", ...rows, seed: 1 }).records.interval;
  test("from 500 on is Woodruff's, below it resampled", () => {
    expect(interval(twoEach(500))).toEqual(woodruffInterval(twoEach(500)));
    expect(interval(twoEach(499))).toEqual(patientBootstrap({ ...twoEach(499), statistic: "quantile", seed: 1 }));
  });
  test("one value a patient stays between order statistics", () => {
    const { values, patient } = twoEach(600);
    const half = { values: values.slice(0, 600), patient: patient.slice(0, 600) };
    expect(interval(half)).toEqual(medianInterval({ values: half.values }));
  });
});
