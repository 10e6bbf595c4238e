import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chiSquare, cochranArmitage, fisherExact, holm } from "@/lib/stats";
import { check, numbers } from "../../external/stat-checks";
import { expectAsChecked } from "./as-checked";

const tableOf = (id: string) => (check(id).input.table ?? check(id).input.table_rows) as readonly (readonly number[])[];

describe("Fisher's exact test", () => {
  test.each(["fisher-tea", "fisher-convictions", "fisher-zero-cell"])("%s", (id) => {
    const { p, pLess, pGreater, estimate, lower, upper } = fisherExact({ table: tableOf(id) });
    const ours = {
      p_two_sided: p,
      p_less: pLess,
      p_greater: pGreater,
      conditional_mle_or: estimate,
      or_estimate: estimate,
      or_lower: lower,
      or_upper: upper,
    };
    const asked = Object.keys(check(id).expected);
    expectAsChecked(id, Object.fromEntries(Object.entries(ours).filter(([field]) => asked.includes(field))));
  });

  test.each(["fisher-rxc-job", "fisher-rxc-3x3", "fisher-rxc-2x3-zero"])("%s", (id) => {
    expectAsChecked(id, { p: fisherExact({ table: tableOf(id) }).p });
  });

  test("a table lying on its side has the same p", () => {
    const table = tableOf("fisher-rxc-2x3-zero");
    const turned = (table[0] as readonly number[]).map((_, j) => table.map((row) => row[j] as number));
    expect(fisherExact({ table: turned }).p).toBeCloseTo(fisherExact({ table }).p, 12);
  });

  test("p doesn't change when rows and columns change places, and stays within 0 and 1", () => {
    const count = fc.integer({ min: 0, max: 12 });
    fc.assert(
      fc.property(fc.tuple(count, count, count, count), ([a, b, c, d]) => {
        fc.pre(a + b > 0 && c + d > 0 && a + c > 0 && b + d > 0);
        const [upright, turned] = [
          fisherExact({
            table: [
              [a, b],
              [c, d],
            ],
          }),
          fisherExact({
            table: [
              [a, c],
              [b, d],
            ],
          }),
        ];
        expect(upright.p).toBeCloseTo(turned.p, 10);
        expect(upright.p).toBeGreaterThan(0);
        expect(upright.p).toBeLessThanOrEqual(1);
      }),
    );
  });

  test("a zero cell that makes the odds ratio infinite: no upper limit, said so", () => {
    const ours = fisherExact({
      table: [
        [5, 0],
        [2, 9],
      ],
    });
    expect(ours).toMatchObject({ estimate: null, upper: null, notes: [{ code: "not-estimable" }] });
    expect(ours.lower).toBeGreaterThan(1);
  });

  test("big tables: 2 × 2 with ten thousand, and a refusal where too many tables are possible", () => {
    expect(
      fisherExact({
        table: [
          [5000, 5000],
          [5000, 5000],
        ],
      }).p,
    ).toBeCloseTo(1, 10);
    const wide = Array.from({ length: 6 }, (_, i) => Array.from({ length: 6 }, (__, j) => 40 + ((i * 7 + j * 5) % 11)));
    expect(() => fisherExact({ table: wide })).toThrow("fisherExact requires fewer than 500000 partial tables, received more");
  });

  test("refuses what is no table", () => {
    expect(() => fisherExact({ table: [[1, 2]] })).toThrow(
      "fisherExact requires a table of at least two rows and two columns, received 1 by 2",
    );
    expect(() => fisherExact({ table: [[1, 2], [3]] })).toThrow("fisherExact requires 2 counts in each row, received 1 in row 1");
    expect(() =>
      fisherExact({
        table: [
          [1, 2],
          [3, 0.5],
        ],
      }),
    ).toThrow("fisherExact requires whole counts from 0, received 0.5 in row 1, column 1");
    expect(() =>
      fisherExact({
        table: [
          [0, 0],
          [3, 1],
        ],
      }),
    ).toThrow("fisherExact requires a count above zero in each row, received none in row 0");
    expect(() =>
      fisherExact({
        table: [
          [1, 2],
          [3, 4],
        ],
        confidence: 1,
      }),
    ).toThrow("fisherExact requires a confidence between 0 and 1, received 1");
  });
});

describe("Pearson's chi-square", () => {
  test.each(["chisq-2x2-a", "chisq-2x2-b", "chisq-2x2-yates-cap"])("%s", (id) => {
    const plain = chiSquare({ table: tableOf(id) });
    const yates = chiSquare({ table: tableOf(id), continuity: true });
    expectAsChecked(id, {
      chisq_uncorrected: plain.statistic,
      p_uncorrected: plain.p,
      chisq_yates: yates.statistic,
      p_yates: yates.p,
      df: plain.df,
    });
  });

  test("r × c, with Cramér's V and the smallest expected count", () => {
    const ours = chiSquare({ table: tableOf("chisq-rxc-agresti") });
    expectAsChecked("chisq-rxc-agresti", { chisq: ours.statistic, df: ours.df, p: ours.p, cramers_v: ours.cramersV });
    const three = chiSquare({ table: tableOf("fisher-rxc-3x3") });
    expectAsChecked("fisher-rxc-3x3", {
      chisq: three.statistic,
      chisq_df: three.df,
      chisq_p: three.p,
      min_expected: three.smallestExpected,
    });
  });

  test("refuses the correction beyond 2 × 2 and an empty column", () => {
    expect(() =>
      chiSquare({
        table: [
          [1, 2, 3],
          [3, 2, 1],
        ],
        continuity: true,
      }),
    ).toThrow("chiSquare requires a 2 by 2 table for the continuity correction, received df 2");
    expect(() =>
      chiSquare({
        table: [
          [1, 0],
          [3, 0],
        ],
      }),
    ).toThrow("chiSquare requires a count above zero in each column, received none in column 1");
  });
});

describe("Cochran–Armitage", () => {
  const asked = (id: string) => {
    const found = check(id);
    return cochranArmitage({ x: numbers(found, "events"), n: numbers(found, "totals"), scores: numbers(found, "scores") });
  };

  test("infant malformation (Agresti): the n version, and Mantel's beside it", () => {
    const { chiSquare: statistic, statistic: z, p, n } = asked("cochran-armitage-agresti");
    const mantel = ((statistic as number) * (n - 1)) / n;
    expectAsChecked("cochran-armitage-agresti", {
      chisq_cochran_armitage: statistic,
      z,
      p,
      M2_mantel_N_minus_1: mantel,
      M: Math.sqrt(mantel),
    });
  });

  test("smokers (Fleiss): z is negative where shares fall", () => {
    const ours = asked("cochran-armitage-smokers");
    expectAsChecked("cochran-armitage-smokers", { chisq: ours.chiSquare, p: ours.p });
    expect(ours.statistic).toBeLessThan(0);
  });

  test("equal scores one apart or a hundred apart are the same line", () => {
    const [x, n] = [
      [1, 4, 9],
      [20, 22, 25],
    ];
    expect(cochranArmitage({ x, n, scores: [100, 200, 300] }).p).toBeCloseTo(cochranArmitage({ x, n }).p as number, 12);
  });

  test("no events, all events: nothing to test", () => {
    expect(cochranArmitage({ x: [0, 0], n: [4, 5] })).toMatchObject({ statistic: null, p: null, notes: [{ code: "constant-values" }] });
    expect(cochranArmitage({ x: [4, 5], n: [4, 5] })).toMatchObject({ statistic: null, p: null, notes: [{ code: "constant-values" }] });
  });

  test("refuses", () => {
    expect(() => cochranArmitage({ x: [1], n: [2] })).toThrow("cochranArmitage requires at least two groups, received 1");
    expect(() => cochranArmitage({ x: [1, 2], n: [2] })).toThrow("cochranArmitage requires n as long as x (2), received 1");
    expect(() => cochranArmitage({ x: [1, 3], n: [2, 2] })).toThrow("cochranArmitage requires x at most n, received 3 of 2 in group 1");
    expect(() => cochranArmitage({ x: [1, 0], n: [2, 0] })).toThrow(
      "cochranArmitage requires n to be a whole number of at least 1, received 0",
    );
    expect(() => cochranArmitage({ x: [1, 1], n: [2, 2], scores: [3, 3] })).toThrow(
      "cochranArmitage requires scores that differ, received one score",
    );
  });
});

describe("Holm", () => {
  test("the fifteen p values of 1995, and ties out of order", () => {
    const found = check("padjust-bh1995");
    const { adjusted } = holm({ p: numbers(found, "p") });
    expectAsChecked("padjust-bh1995", { holm: adjusted, holm_rejections: adjusted.filter((p) => p <= Number(found.input.alpha)).length });
    expectAsChecked("padjust-unsorted-ties", { holm: holm({ p: numbers(check("padjust-unsorted-ties"), "p") }).adjusted });
  });

  test("never below the p itself, never above n times it", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 20 }), (p) => {
        holm({ p }).adjusted.forEach((adjusted, i) => {
          expect(adjusted).toBeGreaterThanOrEqual(p[i] as number);
          expect(adjusted).toBeLessThanOrEqual(Math.min(1, p.length * (p[i] as number)));
        });
      }),
    );
  });

  test("refuses", () => {
    expect(() => holm({ p: [] })).toThrow("holm requires at least one p value, received 0");
    expect(() => holm({ p: [1.2] })).toThrow("holm requires p from 0 to 1, received 1.2");
  });
});
