import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cr2Difference, cr2Regression, htzWald, sampleDeviation } from "@/lib/stats";
import { check, numbers } from "../../external/stat-checks";
import { answerOf, answersOf, expectAsR, expectClose, labelsOf, numbersOf, rowsOf } from "./r-answers";

const fields = ["estimate", "se", "df", "lower", "upper", "statistic", "p"] as const;
type Link = "identity" | "log" | "logit";

function inputOf(r: Readonly<Record<string, unknown>>) {
  const fields = r as Parameters<typeof numbersOf>[0];
  return {
    values: numbersOf(fields, "values"),
    design: rowsOf(fields, "design"),
    patient: labelsOf(fields, "patient"),
    ...(r.weights ? { weights: numbersOf(fields, "weights") } : {}),
    ...(r.exposure ? { exposure: numbersOf(fields, "exposure") } : {}),
    ...(r.link ? { link: r.link as Link } : {}),
  };
}

describe("difference of two means, clustered (clubSandwich)", () => {
  test.each(answersOf("means", "difference-"))("%s", (_, r) => {
    const ours = cr2Difference({ values: numbersOf(r, "values"), group: labelsOf(r, "group"), patient: labelsOf(r, "patient") });
    expectAsR(ours, r, fields);
  });

  test("one value a patient: Welch's error", () => {
    const value = fc.double({ min: -1000, max: 1000, noNaN: true });
    fc.assert(
      fc.property(fc.array(value, { minLength: 3, maxLength: 20 }), fc.array(value, { minLength: 3, maxLength: 20 }), (a, b) => {
        const values = [...a, ...b];
        const { se } = cr2Difference({ values, group: values.map((_, i) => (i < a.length ? "a" : "b")), patient: values.map((_, i) => i) });
        const welch = Math.hypot((sampleDeviation(a) ?? 0) / Math.sqrt(a.length), (sampleDeviation(b) ?? 0) / Math.sqrt(b.length));
        expect(Math.abs((se as number) - welch)).toBeLessThanOrEqual(1e-9 * (welch + 1));
      }),
    );
  });

  test("the other way round the sign turns; rows of a third group take no part", () => {
    const r = answerOf("means", "difference-sleep-shared");
    const input = { values: numbersOf(r, "values"), group: labelsOf(r, "group"), patient: labelsOf(r, "patient") };
    const turned = cr2Difference({ ...input, between: ["2", "1"] });
    expect(turned.estimate).toBeCloseTo(-Number(r.estimate), 12);
    expect(turned.upper).toBeCloseTo(-Number(r.lower), 8);
    expect(turned.patientsInBoth).toBe(10);
    const third = cr2Difference({
      values: [...input.values, 99],
      group: [...input.group, "3"],
      patient: [...input.patient, 1],
      between: ["1", "2"],
    });
    expectAsR(third, r, fields);
  });

  test("two patients on one side: the difference, no interval", () => {
    const ours = cr2Difference({ values: [1, 2, 3, 4, 5], group: ["a", "a", "b", "b", "b"], patient: [1, 2, 3, 4, 5] });
    expect(ours).toMatchObject({ estimate: -2.5, se: null, lower: null, p: null });
    expect(ours.notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });

  test("equal values: nothing to test, said so", () => {
    const ours = cr2Difference({ values: [7, 7, 7, 7, 7, 7], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6] });
    expect(ours).toMatchObject({ estimate: 0, se: 0, statistic: null, p: null });
    expect(ours.notes.map(({ code }) => code)).toContain("constant-values");
  });

  test("what it refuses", () => {
    const three = { values: [1, 2, 3], patient: [1, 2, 3], group: ["a", "b", "c"] };
    expect(() => cr2Difference(three)).toThrow("cr2Difference requires two groups, received 3");
    expect(() => cr2Difference({ ...three, between: ["a", "d"] })).toThrow(
      "cr2Difference requires rows in both groups, received none in the second",
    );
    expect(() => cr2Difference({ ...three, between: ["a", "a"] })).toThrow(
      "cr2Difference requires two different groups, received the same one twice",
    );
    expect(() => cr2Difference({ ...three, group: ["a"] })).toThrow("cr2Difference requires group as long as values (3), received 1");
  });
});

describe("regression, clustered (clubSandwich)", () => {
  test.each(answersOf("means", "regression-"))("%s", (_, r) => {
    const { coefficients } = cr2Regression(inputOf(r));
    for (const name of fields) {
      numbersOf(r, name).forEach((theirs, j) => {
        expectClose(coefficients[j]?.[name], theirs, `${name} ${j}`);
      });
    }
  });

  test.each(["cluster-ols-healing-index", "cluster-orthodont-ols"])("%s", (id) => {
    const found = check(id);
    const columns = id.includes("orthodont") ? null : ["group", "age", "gain_cm"];
    const sexes = id.includes("orthodont") ? numbers(found, "male") : [];
    const ages = numbers(found, "age");
    const design = columns
      ? ages.map((_, i) => columns.map((name) => numbers(found, name)[i] as number))
      : ages.map((age, i) => [age, sexes[i] as number]);
    const y = numbers(found, columns ? "healing_index" : "distance");
    const { coefficients } = cr2Regression({ values: y, design, patient: numbers(found, String(found.input.cluster)) });
    const column = (name: string) => found.expected[name] as readonly number[];
    coefficients.forEach((ours, j) => {
      expectClose(ours.estimate, column("coef")[j], `coef ${j}`);
      expectClose(ours.se, column("se_cr2")[j], `se ${j}`);
      expectClose(ours.df, column("df_cr2_satterthwaite")[j], `df ${j}`, 1e-7);
    });
  });

  test("one row a patient: HC2", () => {
    const found = check("cluster-ols-healing-index");
    const values = numbers(found, "healing_index");
    const design = values.map((_, i) => ["group", "age", "gain_cm"].map((name) => numbers(found, name)[i] as number));
    const { coefficients } = cr2Regression({ values, design, patient: values.map((_, i) => i) });
    coefficients.forEach((ours, j) => {
      expectClose(ours.se, (found.expected.se_hc2 as readonly number[])[j], `HC2 ${j}`);
    });
  });

  test("NIST StRD Longley: certified coefficients to nine digits", () => {
    const found = check("ols-nist-longley");
    const columns = found.input.columns as Readonly<Record<string, readonly number[]>>;
    const [first, ...rest] = Object.keys(columns);
    expect([first, rest.length]).toEqual(["y", 6]);
    const y = columns.y as readonly number[];
    const design = y.map((_, i) => rest.map((name) => (columns[name] as readonly number[])[i] as number));
    const { coefficients } = cr2Regression({ values: y, design, patient: y.map((_, i) => i) });
    coefficients.forEach((ours, j) => {
      expectClose(ours.estimate, (found.expected.coef as readonly number[])[j], `coefficient ${j}`, 1e-9);
    });
  });

  test("NIST StRD Norris: certified coefficients to nine digits", () => {
    const found = check("ols-nist-norris");
    const y = numbers(found, "y");
    const { coefficients } = cr2Regression({ values: y, design: numbers(found, "x").map((x) => [x]), patient: y.map((_, i) => i) });
    coefficients.forEach((ours, j) => {
      expectClose(ours.estimate, (found.expected.coef as readonly number[])[j], `coefficient ${j}`, 1e-9);
    });
  });

  test("published and R figures of ungrouped GLMs", () => {
    const poisson = check("poisson-regression-offset");
    const values = numbers(poisson, "events");
    const exposure = numbers(poisson, "exposure");
    const rate = cr2Regression({
      values,
      exposure,
      design: numbers(poisson, "x").map((x) => [x]),
      patient: values.map((_, i) => i),
      link: "log",
    });
    (poisson.expected.coef as readonly number[]).forEach((theirs, j) => {
      expectClose(rate.coefficients[j]?.estimate, theirs, `coefficient ${j}`);
    });
    expectClose(rate.coefficients[1]?.ratio?.estimate, poisson.expected.rate_ratio, "rate ratio");
  });

  test("a coefficient that one patient alone determines has no error", () => {
    const ours = cr2Regression({
      values: [1, 2, 3, 4, 9],
      design: [[0], [0], [0], [0], [1]],
      patient: [1, 2, 3, 4, 5],
    });
    expect(ours.coefficients[1]).toMatchObject({ se: null, lower: null });
    expect(ours.coefficients[1]?.estimate).toBeCloseTo(6.5, 12);
    expect(ours.coefficients[1]?.notes).toEqual([{ code: "not-estimable", because: "one patient alone determines it" }]);
    expect(ours.coefficients[0]?.se).toBeGreaterThan(0);
  });

  test("two patients: estimates without errors", () => {
    const ours = cr2Regression({ values: [1, 2, 3], design: [[0], [1], [3]], patient: [1, 1, 2] });
    expect(ours.coefficients.map(({ se }) => se)).toEqual([null, null]);
    expect(ours.notes).toEqual([{ code: "too-few-for-interval", patients: 2, needed: 3 }]);
  });

  test("without intercept, with names; sizes far from one", () => {
    const values = [2, 4.1, 5.9, 8.2];
    const design = [[1], [2], [3], [4]];
    const input = { design, patient: [1, 2, 3, 4], intercept: false, names: ["slope"] };
    const plain = cr2Regression({ ...input, values }).coefficients[0];
    const small = cr2Regression({ ...input, values: values.map((value) => value * 1e-300) }).coefficients[0];
    expect(plain?.name).toBe("slope");
    expect((small?.se as number) * 1e300).toBeCloseTo(plain?.se as number, 10);
    expect(() => cr2Regression({ ...input, values, names: [] })).toThrow("cr2Regression requires 1 names, received 0");
  });

  test("what it refuses", () => {
    const patient = [1, 2, 3, 4];
    const input = { values: [1, 2, 3, 5], design: [[1], [2], [3], [4]], patient };
    expect(() => cr2Regression({ ...input, design: [[1], [2], [3]] })).toThrow(
      "cr2Regression requires design as long as values (4), received 3",
    );
    expect(() => cr2Regression({ ...input, design: [[1], [2, 3], [3], [4]] })).toThrow(
      "cr2Regression requires 1 numbers in each row of design, received 2 at 1",
    );
    expect(() =>
      cr2Regression({
        ...input,
        design: [
          [1, 2],
          [2, 4],
          [3, 6],
          [4, 8],
        ],
      }),
    ).toThrow("cr2Regression requires columns that aren't combinations of one another, received one at column 2 (intercept counted)");
    expect(() => cr2Regression({ ...input, design: patient.map((i) => [1, 2, 3, i]) })).toThrow(
      "cr2Regression requires at least as many rows as columns (5), received 4",
    );
    expect(() => cr2Regression({ ...input, values: [1, 2, 3, -5], link: "log" })).toThrow(
      "cr2Regression requires values of at least zero for the link log, received -5 at 3",
    );
    expect(() => cr2Regression({ ...input, weights: [1, 1, 0, 1] })).toThrow("cr2Regression requires weights at 2 above zero, received 0");
    expect(() => cr2Regression({ ...input, exposure: [1, 1, 1, 1] })).toThrow(
      "cr2Regression requires the link log with exposure, received identity",
    );
    expect(() => cr2Regression({ ...input, link: "probit" as "log" })).toThrow(
      "cr2Regression requires the link identity, log or logit, received another",
    );
    expect(() => cr2Regression({ ...input, design: [[1], [Number.NaN], [3], [4]] })).toThrow(
      "cr2Regression requires finite numbers in row 1 of design, received NaN at 0",
    );
    expect(() => cr2Regression({ ...input, values: [1, 2, 3, Infinity] })).toThrow(
      "cr2Regression requires finite numbers in values, received Infinity at 3",
    );
    expect(() => cr2Regression({ ...input, values: [], design: [], patient: [] })).toThrow(
      "cr2Regression requires at least one value, received 0",
    );
    expect(() => cr2Regression({ ...input, confidence: 1 })).toThrow("cr2Regression requires a confidence between 0 and 1, received 1");
    const edge = "requires an outcome that the columns don't separate, received one whose fitted values go to the edge";
    expect(() => cr2Regression({ ...input, values: [0, 0, 1, 1], link: "logit" })).toThrow(edge);
    expect(() => cr2Regression({ ...input, values: [0, 0, 0, 0], link: "log" })).toThrow(edge);
    expect(() => cr2Regression({ ...input, values: [0, 0, 1, 3], design: [[0], [0], [1], [1]], link: "log" })).toThrow(edge);
  });
});

describe("several coefficients together (clubSandwich Wald_test, HTZ)", () => {
  test.each(answersOf("means", "wald-"))("%s", (_, r) => {
    const ours = htzWald({ ...inputOf(r), columns: numbersOf(r, "columns") });
    expectAsR(ours, r, ["statistic", "df", "dfDenominator", "p"]);
  });

  test("too few patients for so many coefficients: no test, and the reason", () => {
    const chick = answerOf("means", "wald-chick-diet");
    const [values, patient, rows] = [numbersOf(chick, "values"), numbersOf(chick, "patient"), rowsOf(chick, "design")];
    const few = patient.flatMap((label, i) => (label <= 3 ? [i] : []));
    const design = few.map((i) => [rows[i]?.[0] as number, (rows[i]?.[0] as number) ** 2, i % 2]);
    const pick = <T>(column: readonly T[]) => few.map((i) => column[i] as T);
    const ours = htzWald({ values: pick(values), design, patient: pick(patient), columns: [0, 1, 2] });
    expect(ours).toMatchObject({ statistic: null, p: null, patients: 3 });
    expect(ours.notes).toEqual([{ code: "not-estimable", because: "too few patients for so many coefficients" }]);
    expect(htzWald({ values: [1, 2, 4, 5], design: [[0], [1], [0], [1]], patient: [1, 1, 2, 2], columns: [0] }).p).toBeNull();
  });

  test("what it refuses", () => {
    const input = { values: [1, 2, 3, 5], design: [[1], [2], [3], [4]], patient: [1, 2, 3, 4] };
    expect(() => htzWald({ ...input, columns: [] })).toThrow("htzWald requires at least one column, received 0");
    expect(() => htzWald({ ...input, columns: [1] })).toThrow("htzWald requires columns below 1, received 1");
  });
});
