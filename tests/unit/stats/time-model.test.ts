import fc, { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { logUpper, normalHazard } from "../../../lib/stats/survival/normal-tail";
import { timeModel } from "../../../lib/stats/time-model";
import { column, expectClose, timeAnswer } from "./time-answers";

type Answer = ReturnType<typeof timeAnswer>;

const designOf = ({ input }: Answer, ...names: string[]) => {
  const columns = names.map((name) => column(input, name));
  return (columns[0] as number[]).map((_, i) => columns.map((values) => values[i] as number));
};
const kidneyDesign = (answer: Answer) => designOf(answer, "age", "sex").map(([age, sex]) => [age as number, (sex as number) - 1]);

function compare(ours: ReturnType<typeof timeModel>, { expected }: Answer) {
  expectClose(
    ours.coefficients.map((one) => one.estimate),
    expected.coefficients,
  );
  expectClose(ours.scale, expected.scale);
  expectClose(ours.logLikelihood, expected.logLikelihood);
  const size = (expected.naive as number[]).length;
  expectClose(
    ours.coefficients.map((one) => one.modelSe),
    (expected.naive as number[]).slice(0, size - 1),
  );
  expectClose(
    ours.coefficients.map((one) => one.se),
    (expected.se as number[]).slice(0, size - 1),
  );
  expectClose(ours.covariance, expected.covariance);
  expectClose(ours.estimate, expected.median);
  expectClose(ours.logSe, expected.logSe);
}

describe("against R's survreg, clustered", () => {
  test("kidney data: right-censored, two rows a patient", () => {
    const answer = timeAnswer("time-model-kidney");
    const rows = { times: column(answer.input, "time"), event: column(answer.input, "status"), patient: column(answer.input, "id") };
    compare(timeModel({ ...rows, design: kidneyDesign(answer), names: ["age", "female"] }), answer);
  });
  test("the same patients seen every thirty days: left-, interval- and right-censored", () => {
    const answer = timeAnswer("time-model-kidney-interval");
    const by = answer.input.by as (number | null)[];
    const rows = { after: column(answer.input, "after"), by, patient: column(answer.input, "id") };
    compare(timeModel({ ...rows, design: kidneyDesign(answer) }), answer);
  });
  test("lung data: three covariates, patients of an institution together", () => {
    const answer = timeAnswer("time-model-lung");
    const event = column(answer.input, "status").map((status) => status - 1);
    const rows = { times: column(answer.input, "time"), event, patient: column(answer.input, "inst") };
    compare(timeModel({ ...rows, design: designOf(answer, "age", "sex", "ph.ecog") }), answer);
  });
});

test("few rows, where full steps overshoot: R's summit is found", () => {
  const answer = timeAnswer("time-model-lung-few");
  const event = column(answer.input, "status").map((status) => status - 1);
  const ours = timeModel({ times: column(answer.input, "time"), event, design: designOf(answer, "age", "wt.loss", "meal.cal") });
  expectClose(
    ours.coefficients.map((one) => one.estimate),
    answer.expected.coefficients,
  );
  expectClose([ours.scale, ours.logLikelihood], [answer.expected.scale, answer.expected.logLikelihood] as number[]);
  expect(ours.iterations).toBeLessThan(20);
});

describe("identities", () => {
  const times = fc.uniqueArray(fc.integer({ min: 20, max: 900 }), { minLength: 4, maxLength: 40 });

  test("nobody censored, no covariate: the geometric mean, and σ the root of the mean square", () => {
    assert(
      property(times, (days) => {
        const logs = days.map(Math.log);
        const mean = logs.reduce((sum, y) => sum + y, 0) / logs.length;
        const sigma = Math.sqrt(logs.reduce((sum, y) => sum + (y - mean) ** 2, 0) / logs.length);
        const ours = timeModel({ times: days, event: days.map(() => 1) });
        expectClose(ours.estimate, Math.exp(mean), 1e-9);
        expectClose(ours.scale, sigma, 1e-9);
        expectClose(ours.logSe, sigma / Math.sqrt(logs.length), 1e-9);
        const density = (y: number) => -Math.log(sigma) - 0.5 * Math.log(2 * Math.PI) - (y - mean) ** 2 / (2 * sigma * sigma) - y;
        expectClose(
          ours.logLikelihood,
          logs.reduce((sum, y) => sum + density(y), 0),
          1e-9,
        );
      }),
    );
  });

  test("days in weeks: the median in weeks, ratios unchanged", () => {
    assert(
      property(times, (days) => {
        const rows = { event: days.map((_, i) => (i % 3 ? 1 : 0)), design: days.map((_, i) => [i % 2]) };
        if (days.length < 9) return;
        const inDays = timeModel({ times: days, ...rows });
        const inWeeks = timeModel({ times: days.map((day) => day / 7), ...rows });
        expectClose(inWeeks.estimate * 7, inDays.estimate, 1e-7);
        expectClose(inWeeks.coefficients[1]?.timeRatio, inDays.coefficients[1]?.timeRatio, 1e-7);
        expectClose(inWeeks.coefficients[1]?.se, inDays.coefficients[1]?.se as number, 1e-7);
      }),
    );
  });

  test("narrow intervals come to the exact times", () => {
    const days = [60, 90, 120, 150, 200, 260, 310];
    const exact = timeModel({ times: days, event: days.map(() => 1) });
    const narrow = timeModel({ after: days.map((day) => day - 1e-3), by: days.map((day) => day + 1e-3) });
    expectClose(narrow.estimate, exact.estimate, 1e-6);
    expectClose(narrow.scale, exact.scale, 1e-6);
    expectClose(narrow.logSe, exact.logSe as number, 1e-5);
  });
});

describe("median at given covariates", () => {
  const rows = { times: [80, 95, 130, 150, 170, 260, 210, 240], event: [1, 1, 1, 0, 1, 1, 1, 1] };
  const design = [1, 1.2, 1.5, 1.7, 2, 2.2, 2.4, 2.6].map((gain) => [gain]);
  test("equals the coefficients put together, with its limits on the log scale", () => {
    const ours = timeModel({ ...rows, design, at: [2], confidence: 0.9 });
    const [b0, b1] = ours.coefficients.map((one) => one.estimate) as [number, number];
    const [v0, v1] = ours.covariance as unknown as [number[], number[]];
    const se = Math.sqrt((v0[0] as number) + 4 * (v0[1] as number) + 4 * (v1[1] as number));
    expectClose(ours.estimate, Math.exp(b0 + 2 * b1), 1e-12);
    expectClose(ours.logSe, se, 1e-12);
    expectClose(ours.se, ours.estimate * se, 1e-12);
    expectClose(ours.lower, ours.estimate * Math.exp(-1.6448536269514722 * se), 1e-12);
    expectClose(ours.upper, ours.estimate * Math.exp(1.6448536269514722 * se), 1e-12);
    expect(ours.at).toEqual([2]);
  });
  test("a coefficient's limits, ratio and test belong together", () => {
    const slope = timeModel({ ...rows, design, names: ["log gain"] }).coefficients[1];
    if (slope?.se == null) throw new Error("a slope with an error is expected");
    expect(slope.name).toBe("log gain");
    expectClose([slope.lower, slope.upper], [slope.estimate - 1.959963984540054 * slope.se, slope.estimate + 1.959963984540054 * slope.se]);
    expectClose(
      [slope.timeRatioLower, slope.timeRatio, slope.timeRatioUpper],
      [slope.lower, slope.estimate, slope.upper].map((x) => Math.exp(x as number)),
    );
    expectClose(slope.statistic, slope.estimate / slope.se);
    expect(slope.p).toBeLessThan(0.001);
  });
});

describe("few patients", () => {
  const rows = { times: [80, 95, 130, 150, 170, 260], event: [1, 1, 1, 1, 1, 1] };
  test("fewer patients than parameters and one: the estimate without an error", () => {
    const ours = timeModel({ ...rows, patient: ["a", "a", "b", "b", "a", "b"] });
    expect([ours.se, ours.lower, ours.upper, ours.covariance, ours.coefficients[0]?.p]).toEqual([null, null, null, null, null]);
    expect(ours.notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
    const four = timeModel({ ...rows, design: [[1], [2], [3], [5], [4], [6]], patient: ["a", "a", "b", "b", "c", "c"] });
    expect(four.se).toBeNull();
    expect(four.notes).toEqual([{ code: "too-few-for-interval", patients: 3, needed: 4 }]);
    expect(four.patients).toBe(3);
  });
  test("enough: no note", () => {
    expect(timeModel(rows).notes).toEqual([]);
    expect(timeModel(rows).patients).toBeNull();
  });
});

describe("far tails", () => {
  test("log of the tail and hazard as R's pnorm and dnorm, to the last digits", () => {
    const { input, expected } = timeAnswer("normal-tail");
    column(input, "z").forEach((z, i) => {
      const [log, hazard] = [column(expected, "logUpper")[i] as number, column(expected, "hazard")[i] as number];
      expect(Math.abs(logUpper(z) - log), `log tail at ${z}`).toBeLessThanOrEqual(4e-15 * Math.max(1, Math.abs(log)));
      // R's own exponent of a difference of logarithms keeps fewer digits far out
      const digits = 1e-15 * (4 + z * z);
      expect(Math.abs(normalHazard(z) - hazard), `hazard at ${z}`).toBeLessThanOrEqual(digits * hazard);
    });
  });
  // Abramowitz, Stegun 1964: log10 Q(z), table 26.2 prints −log Q(z): Q(100) 2173.87154, Q(500) 54289.90830 (decimal logarithms).
  test.each([
    [10, 23.11805],
    [50, 544.96634],
    [100, 2173.87154],
    [500, 54289.9083],
  ])("−log10 P(Z > %d)", (z, printed) => {
    expect(Math.abs(-logUpper(z) / Math.LN10 - printed)).toBeLessThan(6e-6);
  });
  test("the hazard lies between z and z + 1/z, and joins where the series begins", () => {
    for (const z of [1, 5, 20, 34.9, 35.1, 1000]) {
      expect(normalHazard(z)).toBeGreaterThan(z);
      expect(normalHazard(z)).toBeLessThan(z + 1 / z);
    }
    expectClose(normalHazard(35 - 1e-9), normalHazard(35), 1e-10);
    expectClose(logUpper(35 - 1e-9), logUpper(35), 1e-9);
  });
  test("a row censored far beyond the others still fits", () => {
    const ours = timeModel({ times: [10, 11, 12, 13, 14, 1e6], event: [1, 1, 1, 1, 1, 0] });
    expect(ours.estimate).toBeGreaterThan(13);
  });
});

describe("errors say what is required", () => {
  const good = { times: [80, 95, 130, 150], event: [1, 1, 1, 0] };
  const varied = [[1], [2], [4], [3]];
  test.each([
    [{ ...good, times: [], event: [] }, "timeModel requires at least one row, received 0"],
    [{ times: [1, 2] }, "timeModel requires times with event, or after with by, received neither pair alone"],
    [{ ...good, after: [1], by: [2] }, "timeModel requires times with event, or after with by, received neither pair alone"],
    [{ after: [1, 2] }, "timeModel requires times with event, or after with by, received neither pair alone"],
    [{ by: [1, 2] }, "timeModel requires times with event, or after with by, received neither pair alone"],
    [{ after: [1], by: [2], times: [1] }, "timeModel requires times with event, or after with by, received neither pair alone"],
    [{ after: [1], by: [2], event: [1] }, "timeModel requires times with event, or after with by, received neither pair alone"],
    [{ after: [1], by: [Infinity] }, "timeModel requires by to be null or not before after (1), received Infinity at 0"],
    [{ after: [Infinity], by: [null] }, "timeModel requires after to be a time of zero or above, received Infinity at 0"],
    [
      { after: ["7" as unknown as number], by: [9] },
      "timeModel requires after to be a time of zero or above, received a value of type string at 0",
    ],
    [
      { after: [1], by: ["9" as unknown as number] },
      "timeModel requires by to be null or not before after (1), received a value of type string at 0",
    ],
    [{ after: [1, 2], by: [3] }, "timeModel requires by as long as after (2), received 1"],
    [{ after: [], by: [] }, "timeModel requires at least one row, received 0"],
    [{ after: [1], by: [3], patient: [] }, "timeModel requires patient as long as after (1), received 0"],
    [{ after: [1, -2], by: [3, 4] }, "timeModel requires after to be a time of zero or above, received -2 at 1"],
    [{ after: [1, 5], by: [3, 4] }, "timeModel requires by to be null or not before after (5), received 4 at 1"],
    [{ after: [1, 5], by: [3, "x" as unknown as number] }, "received a value of type string at 1"],
    [{ ...good, times: [0, 95, 130, 150] }, "timeModel requires times above zero, received 0 at 0"],
    [{ after: [0, 4], by: [null, 5] }, "timeModel requires times above zero, received 0 at 0"],
    [{ ...good, event: [0, 0, 0, 0] }, "timeModel requires at least 2 events for 2 parameters, received 0"],
    [{ ...good, times: [80, 80, 80, 80] }, "timeModel requires times that differ, received the same for every row"],
    [
      { ...good, design: [[1], [1], [1], [1]], names: ["side"] },
      "timeModel requires covariates that vary, received one value only in side",
    ],
    [{ ...good, design: varied, names: ["a", "b"] }, "timeModel requires a name for each covariate (1), received 2"],
    [{ ...good, design: [[1], [2]] }, "timeModel requires a design with a row for each time (4), received 2"],
    [{ ...good, design: [[1], [2], [3, 4], [1]] }, "timeModel requires design rows of 1 numbers, received 2 at 2"],
    [{ ...good, design: [[1], [2], [Number.NaN], [1]] }, "timeModel requires finite numbers in x1, received another at row 2"],
    [{ ...good, design: varied, at: [] }, "timeModel requires at with 1 covariates, received 0"],
    [{ ...good, confidence: 95 }, "timeModel requires a confidence between 0 and 1, received 95"],
    [
      {
        times: [80, 95, 130, 150, 99],
        event: [1, 1, 1, 1, 1],
        design: [
          [1, 2],
          [2, 4],
          [3, 6],
          [4, 8],
          [5, 10],
        ],
      },
      "timeModel requires covariates that don't explain each other, received some that do",
    ],
    [
      { times: [1, 2, 4, 8].map((t) => 10 * t), event: [1, 1, 1, 1], design: [[0], [1], [2], [3]] },
      "timeModel requires times that the covariates don't explain exactly, received none left over",
    ],
    [
      { times: [80, 95, 130, 150, 160, 170], event: [1, 1, 1, 0, 0, 0], design: [[0], [0], [0], [1], [1], [1]] },
      "timeModel requires a likelihood with a summit, received one that climbs without end",
    ],
  ])("%#", (input, message) => {
    expect(() => timeModel(input)).toThrow(message);
  });
});
