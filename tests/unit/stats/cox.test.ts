import fc, { assert, property } from "fast-check";
import { describe, expect, test } from "vitest";
import { cox } from "../../../lib/stats/cox";
import { logRank } from "../../../lib/stats/log-rank";
import { check, numbers, toleranceOf } from "../../external/stat-checks";
import { column, expectClose, timeAnswer } from "./time-answers";

type Answer = ReturnType<typeof timeAnswer>;

function compare(ours: ReturnType<typeof cox>, { expected }: Answer) {
  expectClose(
    ours.coefficients.map((one) => one.estimate),
    expected.coefficients,
  );
  expectClose(
    ours.coefficients.map((one) => one.modelSe),
    expected.naive,
  );
  expectClose(
    ours.coefficients.map((one) => one.se),
    expected.se,
  );
  expectClose(ours.logLikelihood, expected.logLikelihood);
  expectClose(ours.nullLogLikelihood, expected.nullLogLikelihood);
}

const designOf = ({ input }: Answer, names: readonly string[]) =>
  column(input, names[0] as string).map((_, i) => names.map((name) => column(input, name)[i] as number));

describe("against printed figures and R", () => {
  const freireich = check("logrank-freireich");
  const rows = { times: numbers(freireich, "time"), event: numbers(freireich, "event") };
  const design = (freireich.input.arm as string[]).map((arm) => [arm === "placebo" ? 1 : 0]);
  test("Freireich 1963: 1.5721, error 0.4124 (Efron); Breslow beside", () => {
    const printed = check("cox-freireich");
    const [efron, breslow] = [cox({ ...rows, design }), cox({ ...rows, design, ties: "breslow" })];
    const [b, se] = [efron.coefficients[0]?.estimate as number, efron.coefficients[0]?.modelSe as number];
    expect(Math.abs(b - (printed.expected.coef_efron as number))).toBeLessThanOrEqual(toleranceOf(printed, "coef_efron"));
    expect(Math.abs(se - (printed.expected.se_efron as number))).toBeLessThanOrEqual(toleranceOf(printed, "se_efron"));
    expectClose([b, se], [printed.computed?.coef_efron, printed.computed?.se_efron] as number[]);
    const theirs = [printed.computed?.coef_breslow, printed.computed?.se_breslow] as number[];
    expectClose([breslow.coefficients[0]?.estimate, breslow.coefficients[0]?.modelSe], theirs);
  });

  test.each(["efron", "breslow"] as const)("kidney data, two rows a patient, %s", (ties) => {
    const answer = timeAnswer(`cox-kidney-${ties}`);
    const input = { times: column(answer.input, "time"), event: column(answer.input, "status"), patient: column(answer.input, "id") };
    compare(cox({ ...input, design: designOf(answer, ["age", "sex"]), ties }), answer);
  });
  test("bladder data, many ties", () => {
    const answer = timeAnswer("cox-bladder-efron");
    const event = column(answer.input, "status").map((status) => (status === 1 ? 1 : 0));
    const input = { times: column(answer.input, "time"), event, patient: column(answer.input, "id") };
    compare(cox({ ...input, design: designOf(answer, ["number", "size"]) }), answer);
  });
  test("few rows, where full steps overshoot", () => {
    const answer = timeAnswer("cox-lung-few");
    const event = column(answer.input, "status").map((status) => status - 1);
    const ours = cox({ times: column(answer.input, "time"), event, design: designOf(answer, ["age", "wt.loss", "meal.cal"]) });
    expectClose(
      ours.coefficients.map((one) => one.estimate),
      answer.expected.coefficients,
    );
    expectClose(ours.logLikelihood, answer.expected.logLikelihood);
    expect(ours.iterations).toBeLessThan(20);
  });
  test("heart data, delayed entry", () => {
    const answer = timeAnswer("cox-heart-entry");
    const [times, entry] = [column(answer.input, "stop"), column(answer.input, "start")];
    const input = { times, entry, event: column(answer.input, "event"), patient: column(answer.input, "id") };
    compare(cox({ ...input, design: designOf(answer, ["age", "year", "surgery"]) }), answer);
  });
});

describe("identities", () => {
  const row = fc.record({
    time: fc.integer({ min: 1, max: 12 }),
    event: fc.integer({ min: 0, max: 1 }),
    x: fc.integer({ min: 0, max: 5 }),
  });
  const usable = fc
    .array(row, { minLength: 20, maxLength: 40 })
    .filter((data) => data.filter((d) => d.event && d.x % 2).length > 3 && data.filter((d) => d.event && d.x % 2 === 0).length > 3);
  const asInput = (data: readonly { time: number; event: number; x: number }[]) => ({
    times: data.map((d) => d.time),
    event: data.map((d) => d.event),
    design: data.map((d) => [d.x]),
  });

  test("twice the same rows under the same patient, Breslow ties: the same estimate and the same error", () => {
    const base = asInput(Array.from({ length: 24 }, (_, i) => ({ time: 1 + ((i * 7) % 24), event: i % 4 ? 1 : 0, x: (i * 5) % 6 })));
    const patient = base.times.map((_, i) => i);
    const once = cox({ ...base, patient, ties: "breslow" });
    const twice = cox({
      times: [...base.times, ...base.times],
      event: [...base.event, ...base.event],
      design: [...base.design, ...base.design],
      patient: [...patient, ...patient],
      ties: "breslow",
    });
    expectClose(twice.estimate, once.estimate as number, 1e-9);
    expectClose(twice.se, once.se as number, 1e-9);
    expectClose((twice.coefficients[0]?.modelSe as number) * Math.SQRT2, once.coefficients[0]?.modelSe as number, 1e-9);
  });

  test("a covariate in other units, or turned round, turns the coefficient with it", () => {
    assert(
      property(usable, (data) => {
        const one = cox(asInput(data));
        const other = cox(asInput(data.map((d) => ({ ...d, x: 10 - 2 * d.x }))));
        expectClose((other.estimate as number) * -2, one.estimate as number, 1e-7);
        expectClose((other.se as number) * 2, one.se as number, 1e-7);
      }),
      { numRuns: 50 },
    );
  });

  test("the score at no effect is the log-rank's: twice the likelihood's rise lies near its statistic", () => {
    const data = Array.from({ length: 200 }, (_, i) => ({ time: 1 + ((i * 37) % 199), event: i % 3 ? 1 : 0, x: i % 2 }));
    const input = asInput(data);
    const fit = cox(input);
    const rank = logRank({ times: input.times, event: input.event, group: data.map((d) => d.x) });
    expect(Math.abs(2 * (fit.logLikelihood - fit.nullLogLikelihood) - (rank.statistic as number))).toBeLessThan(0.05);
  });
});

describe("record", () => {
  const rows = { times: [2, 3, 4, 5, 6, 7, 8, 9], event: [1, 1, 1, 1, 1, 0, 1, 1], design: [[0], [1], [1], [0], [1], [0], [0], [1]] };
  test("limits, ratio and test belong together, the first covariate stands in front", () => {
    const ours = cox({ ...rows, names: ["side"], confidence: 0.9 });
    const one = ours.coefficients[0];
    if (one?.se == null) throw new Error("a coefficient with an error is expected");
    expect([ours.estimate, ours.se, ours.lower, ours.upper]).toEqual([one.estimate, one.se, one.lower, one.upper]);
    expectClose([one.lower, one.upper], [one.estimate - 1.6448536269514722 * one.se, one.estimate + 1.6448536269514722 * one.se], 1e-12);
    expectClose(
      [one.hazardRatioLower, one.hazardRatio, one.hazardRatioUpper],
      [one.lower, one.estimate, one.upper].map((x) => Math.exp(x as number)),
    );
    expectClose(one.statistic, one.estimate / one.se, 1e-12);
    expect([one.name, ours.events, ours.n, ours.patients, ours.notes]).toEqual(["side", 7, 8, null, []]);
    expect(ours.method).toContain("by row");
    expect(cox({ ...rows, ties: "breslow" }).convention).toContain("Breslow");
  });
  test("few patients: no error, and a note", () => {
    const ours = cox({ ...rows, patient: [1, 1, 1, 1, 2, 2, 2, 2] });
    expect([ours.se, ours.lower, ours.coefficients[0]?.p]).toEqual([null, null, null]);
    expect(ours.notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });
});

describe("errors say what is required", () => {
  const good = { times: [1, 2, 3, 4], event: [1, 1, 1, 0], design: [[1], [2], [1], [3]] };
  const none = { times: [1, 2], event: [1, 1] };
  test.each([
    [{ ...good, event: [1, 1, 1, 2] }, "cox requires event codes from 0 to 1, received 2 at 3"],
    [none, "cox requires at least one covariate, received none"],
    [{ ...good, event: [0, 0, 0, 0] }, "cox requires at least 1 events for 1 covariates, received 0"],
    [{ ...good, ties: "exact" as "efron" }, "cox requires ties efron or breslow, received another"],
    [{ ...good, confidence: 2 }, "cox requires a confidence between 0 and 1, received 2"],
    [{ ...good, design: [[1], [1], [1], [1]] }, "cox requires covariates that vary, received one value only in x1"],
    [
      { times: [1, 2, 3, 4, 5, 6], event: [1, 1, 1, 0, 0, 0], design: [[1], [1], [1], [0], [0], [0]] },
      "cox requires covariates that don't explain each other nor separate who has the event, received a likelihood without a summit",
    ],
    [
      {
        times: [1, 2, 3, 4],
        event: [1, 1, 1, 1],
        design: [
          [1, 2],
          [2, 4],
          [1, 2],
          [3, 6],
        ],
      },
      "cox requires covariates that don't explain each other nor separate who has the event, received a likelihood without a summit",
    ],
  ])("%#", (input, message) => {
    expect(() => cox(input)).toThrow(message);
  });
});
