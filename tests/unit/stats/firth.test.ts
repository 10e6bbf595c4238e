import { describe, expect, test } from "vitest";
import { firthLogistic } from "@/lib/stats";
import { answersOf, expectClose, numbersOf, rowsOf } from "./r-answers";

describe("Firth's logistic regression", () => {
  test.each(answersOf("agreement", "firth-"))("%s", (_, r) => {
    const { coefficients } = firthLogistic({ design: rowsOf(r, "design"), event: numbersOf(r, "event") });
    for (const field of ["estimate", "se", "lower", "upper", "statistic", "p"] as const) {
      coefficients.forEach((coefficient, j) => {
        expectClose(coefficient[field], numbersOf(r, field)[j], `${field} ${j}`);
      });
    }
  });

  test("two groups: log odds with one half added to each cell (Firth 1993, section 3)", () => {
    const event = [1, 1, 1, 0, 0, 0, 0, 0, 0];
    const design = [0, 0, 0, 0, 1, 1, 1, 1, 1].map((x) => [x]);
    const [start, step] = firthLogistic({ design, event }).coefficients;
    expect(start?.estimate).toBeCloseTo(Math.log(3.5 / 1.5), 10);
    expect((start?.estimate as number) + (step?.estimate as number)).toBeCloseTo(Math.log(0.5 / 5.5), 10);
  });

  test("separation: finite, and the interval leaves zero", () => {
    const x = Array.from({ length: 20 }, (_, i) => i);
    const [, slope] = firthLogistic({ design: x.map((value) => [value]), event: x.map((value) => (value < 10 ? 0 : 1)) }).coefficients;
    expect(slope?.lower).toBeGreaterThan(0);
    expect(Number.isFinite(slope?.upper)).toBe(true);
  });

  test("no events, all events, no column, one row", () => {
    const none = firthLogistic({ design: [[], [], [], []], event: [0, 0, 0, 0] }).coefficients;
    expect(none[0]?.estimate).toBeCloseTo(Math.log(0.5 / 4.5), 10);
    const all = firthLogistic({ design: [[0], [0], [1], [1]], event: [1, 1, 1, 1] }).coefficients;
    expect(all[1]?.estimate).toBeCloseTo(0, 10);
    expect(firthLogistic({ design: [[]], event: [1] }).coefficients[0]?.estimate).toBeCloseTo(Math.log(3), 10);
  });

  test("a column a thousand times larger has a coefficient a thousand times smaller", () => {
    const [design, event] = [[1, 2, 4, 5, 7, 9].map((x) => [x]), [0, 0, 1, 0, 1, 1]];
    const before = firthLogistic({ design, event }).coefficients[1];
    for (const size of [1e3, 1e15, 1e-300]) {
      const after = firthLogistic({ design: design.map(([x]) => [(x as number) * size]), event }).coefficients[1];
      expect((after?.estimate as number) * size).toBeCloseTo(before?.estimate as number, 9);
      expect((after?.upper as number) * size).toBeCloseTo(before?.upper as number, 7);
    }
  });

  test("refuses", () => {
    expect(() => firthLogistic({ design: [], event: [] })).toThrow("firthLogistic requires at least one row, received 0");
    expect(() => firthLogistic({ design: [[1], [2]], event: [0, 2] })).toThrow(
      "firthLogistic requires event to be 0 or 1, received 2 in row 1",
    );
    expect(() => firthLogistic({ design: [[1], [2, 3]], event: [0, 1] })).toThrow(
      "firthLogistic requires row 1 as long as the first row of design (1), received 2",
    );
    expect(() => firthLogistic({ design: [[1], [1], [1]], event: [0, 1, 1] })).toThrow(
      "firthLogistic requires columns that aren't combinations of one another",
    );
    expect(() => firthLogistic({ design: [[1], [Number.NaN]], event: [0, 1] })).toThrow(
      "firthLogistic requires finite numbers in design, received NaN at 0",
    );
  });
});
