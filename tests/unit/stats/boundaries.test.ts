import { describe, expect, test } from "vitest";
import {
  aalenJohansen,
  cox,
  cr2Difference,
  cr2Mean,
  cr2Regression,
  type Estimate,
  eventRate,
  exactRateRatio,
  grayTest,
  htzWald,
  kaplanMeier,
  logRank,
  pairedT,
  patientMean,
  plainMean,
  rateRatio,
  ratioOfSums,
  restrictedMeanDifference,
  reverseKaplanMeier,
  riskDifference,
  timeModel,
  turnbull,
  welch,
  wilsonClustered,
} from "@/lib/stats";
import { wholeDf } from "../../../lib/stats/summary/whole-df";

type Limits = Pick<Estimate, "estimate" | "se" | "lower" | "upper">;

const range = (n: number) => Array.from({ length: n }, (_, i) => i);

describe("sizes: values of 1e-200 or 1e200 give the same answer in their own unit", () => {
  // Their squares vanish or overflow, so that an answer that scales exactly has been computed in another unit and turned back.
  const values = [31.5, 28, 40.25, 36, 33.75, 45.5, 29];
  const patient = ["a", "a", "b", "c", "d", "e", "e"];
  const group = [1, 2, 1, 1, 1, 2, 2];
  const apart = ["a", "b", "c", "d", "e", "f", "g"];
  const power = (size: number) => 2 ** Math.round(Math.log2(size)); // a power of two changes no digit
  const methods: readonly (readonly [string, (values: readonly number[]) => Limits])[] = [
    ["cr2Mean", (scaled) => cr2Mean({ values: scaled, patient })],
    ["patientMean", (scaled) => patientMean({ values: scaled, patient })],
    ["plainMean", (scaled) => plainMean({ values: scaled })],
    ["ratioOfSums, numerator", (scaled) => ratioOfSums({ numerator: scaled, denominator: [4, 5, 6, 3, 5, 8, 3], patient: apart })],
    ["welch", (scaled) => welch({ values: scaled, group, patient: apart })],
    ["cr2Difference", (scaled) => cr2Difference({ values: scaled, group, patient: apart })],
    [
      "cr2Regression",
      (scaled) => cr2Regression({ values: scaled, design: range(7).map((i) => [i % 4]), patient: apart }).coefficients[1] as Limits,
    ],
  ];
  describe.each([1e-200, 1e200])("%d", (size) => {
    test.each(methods)("%s", (_, ask) => {
      const [plain, scaled] = [ask(values), ask(values.map((value) => value * power(size)))];
      for (const field of ["estimate", "se", "lower", "upper"] as const) {
        expect((scaled[field] as number) / power(size) / (plain[field] as number), field).toBeCloseTo(1, 12);
      }
    });
    test("ratioOfSums, denominator", () => {
      const ask = (by: number) => ratioOfSums({ numerator: values, denominator: [4, 5, 6, 3, 5, 8, 3].map((x) => x * by), patient: apart });
      const [plain, scaled] = [ask(1), ask(power(size))];
      expect((scaled.estimate * power(size)) / plain.estimate).toBeCloseTo(1, 12);
      expect(((scaled.se as number) * power(size)) / (plain.se as number)).toBeCloseTo(1, 12);
    });
  });
});

describe("three patients are enough for an interval, two are not", () => {
  const two = ["a", "a", "b", "b", "b", "a"];
  const three = ["a", "a", "b", "b", "c", "c"];
  const times = [3, 5, 8, 9, 12, 14];
  const event = [1, 1, 0, 1, 1, 1];
  const values = [3, 5, 9, 4, 7, 8];
  const asks: readonly (readonly [string, (patient: readonly string[]) => { lower: number | null; notes: readonly { code: string }[] }])[] =
    [
      ["cr2Mean", (patient) => cr2Mean({ values, patient })],
      ["patientMean", (patient) => patientMean({ values, patient })],
      ["wilsonClustered", (patient) => wilsonClustered({ event, patient })],
      ["eventRate", (patient) => eventRate({ events: event, exposure: values, patient })],
      ["aalenJohansen", (patient) => aalenJohansen({ times, event, patient, at: 6 })],
      [
        "kaplanMeier to tau",
        (patient) => ({
          ...kaplanMeier({ times, event, patient, tau: 10 }),
          lower: kaplanMeier({ times, event, patient, tau: 10 }).restrictedMean?.lower ?? null,
        }),
      ],
      ["cox", (patient) => cox({ times, event, patient, design: [[0], [1], [1], [0], [1], [0]] })],
      [
        "restrictedMeanDifference",
        (patient) => restrictedMeanDifference({ times, event: [1, 1, 1, 1, 1, 1], patient, tau: 6, group: [1, 2, 1, 2, 1, 2] }),
      ],
      ["timeModel", (patient) => timeModel({ times, event, patient })],
    ];
  test.each(asks)("%s", (_, ask) => {
    expect(ask(two).lower).toBeNull();
    expect(ask(two).notes.map(({ code }) => code)).toContain("too-few-for-interval");
    expect(ask(three).lower).not.toBeNull();
    expect(ask(three).notes.map(({ code }) => code)).not.toContain("too-few-for-interval");
  });
  test("as a test: log-rank and HTZ", () => {
    const group = [1, 2, 1, 2, 1, 2];
    const rows = { times: [3, 5, 8, 9, 12, 14], event: [1, 1, 1, 1, 1, 1], group };
    expect(logRank({ ...rows, patient: three }).statistic).not.toBeNull();
    expect(logRank({ ...rows, patient: two }).statistic).toBeNull();
    const design = [[0], [1], [3], [2], [5], [4]];
    expect(htzWald({ values, design, patient: two, columns: [0] })).toMatchObject({ statistic: null, dfDenominator: null, p: null });
    expect(htzWald({ values, design, patient: three, columns: [0] }).p).not.toBeNull();
  });
  test("one group of two is too few for a difference of shares, whichever it is", () => {
    const rows = { event: [1, 0, 1, 0, 1], group: [1, 1, 2, 2, 2] };
    for (const between of [
      [1, 2],
      [2, 1],
    ] as const) {
      const ours = riskDifference({ ...rows, patient: range(5), between });
      expect([ours.lower, ours.upper]).toEqual([null, null]);
      expect(ours.notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
    }
    const enough = riskDifference({ event: [1, 0, 1, 0, 1, 0], group: [1, 1, 1, 2, 2, 2], patient: range(6) });
    expect(enough.notes).toEqual([]);
    expect(enough.lower).not.toBeNull();
  });
});

describe("more parameters than patients carry", () => {
  const times = [30, 50, 80, 90, 120, 140, 60, 75];
  const event = [1, 1, 0, 1, 1, 1, 1, 1];
  const design = [
    [0, 3],
    [1, 5],
    [1, 2],
    [0, 4],
    [1, 1],
    [0, 2],
    [1, 6],
    [0, 5],
  ];
  test("Cox: as many patients as covariates have no error, one more have", () => {
    const three = [
      [0, 3, 1],
      [1, 5, 0],
      [1, 2, 1],
      [0, 4, 1],
      [1, 1, 0],
      [0, 2, 1],
      [1, 6, 1],
      [0, 5, 0],
    ];
    const patient = [1, 1, 2, 2, 3, 3, 3, 1];
    const few = cox({ times, event, design: three, patient });
    expect(few.se).toBeNull();
    expect(few.notes).toEqual([{ code: "too-few-for-interval", patients: 3, needed: 4 }]);
    expect(cox({ times, event, design: three, patient: [1, 1, 2, 2, 3, 3, 4, 4] }).se).not.toBeNull();
  });
  test("Cox: as many events as covariates, not fewer", () => {
    const one = { times, event: [0, 1, 0, 0, 0, 0, 0, 0] };
    expect(() => cox({ ...one, design })).toThrow("cox requires at least 2 events for 2 covariates, received 1");
    expect(cox({ ...one, design: design.map(([, x]) => [x as number]) }).events).toBe(1);
  });
  test("time model: one event more than coefficients", () => {
    const rows = { times, design: design.map(([, x]) => [x as number]) };
    expect(() => timeModel({ ...rows, event: [1, 1, 0, 0, 0, 0, 0, 0] })).toThrow(
      "timeModel requires at least 3 events for 3 parameters, received 2",
    );
    expect(timeModel({ ...rows, event: [1, 1, 0, 1, 0, 0, 0, 0] }).events).toBe(3);
  });
  test("time model: patients must outnumber its parameters", () => {
    const rows = { times, event, design };
    expect(timeModel({ ...rows, patient: [1, 1, 2, 2, 3, 3, 4, 4] }).se).toBeNull();
    expect(timeModel({ ...rows, patient: [1, 1, 2, 2, 3, 3, 4, 5] }).se).not.toBeNull();
  });
});

describe("a record says the whole", () => {
  const rows = { values: [3, 4, 5, 1, 2, 4], group: ["x", "x", "x", "y", "y", "y"], patient: [1, 2, 3, 4, 5, 5] };
  test("groups of a difference", () => {
    const groups = [
      { label: "x", mean: 4, n: 3, patients: 3 },
      { label: "y", mean: 7 / 3, n: 3, patients: 2 },
    ];
    expect(cr2Difference(rows).groups).toEqual(groups);
    expect(welch(rows).groups).toEqual([groups[0], { label: "y", mean: 2, n: 3, patients: 2 }]);
  });
  test("groups of a ratio of rates", () => {
    const { groups, n, patients } = rateRatio({
      events: [2, 1, 3, 1, 1, 0],
      exposure: [1, 2, 1, 2, 1, 2],
      group: rows.group,
      patient: range(6),
    });
    expect([n, patients]).toEqual([6, 6]);
    expect(groups).toEqual([
      { label: "x", sum: 6, over: 4, estimate: 1.5, n: 3, patients: 3 },
      { label: "y", sum: 2, over: 5, estimate: 0.4, n: 3, patients: 3 },
    ]);
  });
  test("names of coefficients, given or counted", () => {
    const input = {
      values: [1, 2, 4, 5, 4],
      design: [
        [0, 1],
        [1, 0],
        [2, 2],
        [3, 1],
        [1, 3],
      ],
      patient: range(5),
    };
    expect(cr2Regression(input).coefficients.map(({ name }) => name)).toEqual(["intercept", "x1", "x2"]);
    expect(cr2Regression({ ...input, names: ["a", "b"] }).coefficients.map(({ name }) => name)).toEqual(["intercept", "a", "b"]);
    expect(cr2Regression(input).notes).toEqual([]);
  });
  test("the restricted mean of each group with its n", () => {
    const ours = restrictedMeanDifference({ times: [2, 4, 6, 8, 9], event: [1, 1, 1, 1, 1], group: [0, 0, 1, 1, 1], tau: 8 });
    expect(ours.groups).toEqual([
      { label: 0, mean: 3, n: 2 },
      { label: 1, mean: expect.closeTo(22 / 3, 12), n: 3 },
    ]);
    expect(ours.notes).toEqual([]);
    expect(ours.statistic).toBeCloseTo((ours.estimate as number) / (ours.se as number), 12);
  });
  test("a mean that only one group reaches is no difference", () => {
    const open = { times: [2, 4, 6, 8, 3, 5], event: [1, 1, 1, 0, 1, 1], group: [0, 0, 1, 1, 0, 0], tau: 9 };
    for (const between of [
      [0, 1],
      [1, 0],
    ] as const) {
      const ours = restrictedMeanDifference({ ...open, between });
      expect([ours.estimate, ours.se, ours.lower, ours.p]).toEqual([null, null, null, null]);
      expect(ours.groups.map(({ mean }) => mean !== null).sort()).toEqual([false, true]);
    }
  });
  test("no spread: a difference of zero error has no test", () => {
    const same = restrictedMeanDifference({ times: [9, 9, 9, 9], event: [1, 1, 1, 1], group: [0, 0, 1, 1], tau: 5 });
    expect([same.estimate, same.se, same.lower, same.statistic]).toEqual([0, 0, null, null]);
    expect(pairedT({ values: [3, 2, 4, 3, 5, 4], group: [1, 2, 1, 2, 1, 2], patient: [1, 1, 2, 2, 3, 3] })).toMatchObject({
      statistic: null,
      p: null,
    });
  });
  test("no note where nothing is to be said", () => {
    const times = [1, 2, 3, 4, 5, 6];
    const event = [1, 1, 1, 1, 1, 1];
    const group = [1, 2, 1, 2, 1, 2];
    expect(kaplanMeier({ times, event, tau: 4 }).notes).toEqual([]);
    expect(kaplanMeier({ times, event }).restrictedMean).toBeNull();
    expect(logRank({ times, event, group }).notes).toEqual([]);
    expect(grayTest({ times, event, group }).notes).toEqual([]);
    expect(turnbull({ times, event }).notes).toEqual([]);
    expect(turnbull({ times, event }).medianSpan).toEqual([3, 3]);
    expect(aalenJohansen({ times, event }).notes).toEqual([]);
    expect(wilsonClustered({ event: [1, 0, 1, 0, 1, 0], patient: range(6) }).notes).toEqual([]);
    expect(ratioOfSums({ numerator: times, denominator: times.map((t) => t + (t % 2)), patient: range(6) }).notes).toEqual([]);
    expect(patientMean({ values: times, patient: range(6) }).notes).toEqual([]);
  });
  test("other notes of the curve stay as they are when it is turned round", () => {
    const { notes } = reverseKaplanMeier({ times: [1, 2], event: [0, 0], patient: [1, 2] });
    expect(notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });
});

describe("incidence at a time", () => {
  const input = { times: [2, 3, 5, 5, 8], event: [1, 2, 1, 0, 0] };
  test("a step counts from its own time on, the first included", () => {
    const { causes } = aalenJohansen(input);
    for (const [time, step] of [
      [2, 0],
      [2.5, 0],
      [3, 1],
      [5, 2],
      [8, 3],
    ] as const) {
      const ours = aalenJohansen({ ...input, at: time });
      const curve = causes[0];
      expect([ours.estimate, ours.se, ours.lower, ours.upper]).toEqual([
        curve?.incidence[step],
        curve?.se[step],
        curve?.lower[step],
        curve?.upper[step],
      ]);
    }
  });
  test("its method names the error", () => {
    expect(aalenJohansen(input).method).toBe("Aalen–Johansen, infinitesimal jackknife, log-log limits");
    expect(aalenJohansen({ ...input, patient: range(5), limits: "log" }).method).toBe(
      "Aalen–Johansen, infinitesimal jackknife by patient, log limits",
    );
  });
  test("twenty patients are enough to resample", () => {
    const many = { times: range(40).map((i) => i + 1), event: range(40).map((i) => i % 3), patient: range(40).map((i) => i % 20) };
    const ours = aalenJohansen({ ...many, variance: "bootstrap", seed: 1, replicates: 99 });
    expect(ours.notes).toEqual([]);
    expect(ours.lower).not.toBeNull();
  });
});

test("degrees of freedom a hair beside a whole number are that number, others stay", () => {
  expect(wholeDf(3.999999999999999)).toBe(4);
  expect(wholeDf(4.000000000000001)).toBe(4);
  expect(wholeDf(3.99999)).toBe(3.99999);
  expect(wholeDf(2000.000001)).toBe(2000);
  expect(wholeDf(7.25)).toBe(7.25);
  expect(cr2Mean({ values: [1, 2, 3, 4, 5], patient: range(5) }).notes).toEqual([{ code: "clustered", df: 4 }]);
});

test("exact rate ratio: as many events as expected has p of one, and each side its own tail", () => {
  const ask = (events1: number, events2: number) => exactRateRatio({ events1, exposure1: 1, events2, exposure2: 1 }).p as number;
  expect(ask(4, 4)).toBe(1);
  // by hand: outcomes of 8 events no likelier than 1 : 7 are 0, 1, 7 and 8, together 18/256
  expect(ask(1, 7)).toBeCloseTo(18 / 256, 12);
  expect(ask(7, 1)).toBeCloseTo(18 / 256, 12);
  expect(ask(0, 8)).toBeCloseTo(2 / 256, 12);
});
