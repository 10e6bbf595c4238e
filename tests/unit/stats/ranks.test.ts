import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { kruskalWallis, mannWhitney, signedRank } from "@/lib/stats";
import { check, numbers } from "../../external/stat-checks";
import { expectAsChecked } from "./as-checked";

const two = (id: string, options: { exact?: boolean } = {}) => {
  const [x, y] = [numbers(check(id), "x"), numbers(check(id), "y")];
  return mannWhitney({ values: [...x, ...y], group: [...x.map(() => "x"), ...y.map(() => "y")], ...options });
};
const paired = (id: string, options: { exact?: boolean } = {}) => {
  const [x, y] = [numbers(check(id), "x"), numbers(check(id), "y")];
  return signedRank({ values: x.map((value, i) => value - (y[i] as number)), ...options });
};
const small = fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 1, maxLength: 9 });

describe("Mann–Whitney", () => {
  test("Hollander and Wolfe: exact p, shift and interval", () => {
    const { statistic, pGreater, p, estimate, lower, upper } = two("mann-whitney-exact-hollander");
    const ours = {
      W_first_sample: statistic,
      p_one_sided_greater: pGreater,
      p_two_sided: p,
      hodges_lehmann_shift: estimate,
      ci_lower: lower,
      ci_upper: upper,
    };
    expectAsChecked("mann-whitney-exact-hollander", ours);
  });

  test("ties: all arrangements of midranks, and the normal with correction", () => {
    const [all, normal] = [two("mann-whitney-ties"), two("mann-whitney-ties", { exact: false })];
    expectAsChecked("mann-whitney-ties", { U: all.statistic, z_nocc: all.z, p_exact_permutation: all.p, p_normal_cc: normal.p });
    expect(normal.pLess).toBeCloseTo((normal.p as number) / 2, 12);
    expect((normal.pLess as number) + (normal.pGreater as number)).toBeGreaterThan(1);
  });

  test("shift and interval are those of the written-out differences", () => {
    fc.assert(
      fc.property(small, small, (a, b) => {
        const all = a.flatMap((one) => b.map((other) => one - other)).sort((one, other) => one - other);
        const middle = ((all[(all.length - 1) >> 1] as number) + (all[all.length >> 1] as number)) / 2;
        const ours = mannWhitney({ values: [...a, ...b], group: [...a.map(() => 1), ...b.map(() => 2)] });
        expect(ours.estimate).toBeCloseTo(middle, 12);
        if (ours.lower !== null) expect(all).toContain(ours.lower);
        if (ours.upper !== null) expect(all).toContain(ours.upper);
      }),
    );
  });

  test("the groups the other way round: the shift turns its sign", () => {
    const [values, group] = [
      [5, 9, 7, 1, 2, 8],
      ["b", "b", "b", "a", "a", "c"],
    ];
    const one = mannWhitney({ values, group, between: ["a", "b"] });
    const other = mannWhitney({ values, group, between: ["b", "a"] });
    expect(one.estimate).toBe(-(other.estimate as number));
    expect([one.p, one.n]).toEqual([other.p, 5]);
  });

  test("too few for a 95 % interval: 3 against 3 has none, 4 against 4 has one", () => {
    expect(mannWhitney({ values: [1, 2, 3, 4, 5, 6], group: [1, 1, 1, 2, 2, 2] })).toMatchObject({
      lower: null,
      upper: null,
      notes: [{ code: "too-few-for-interval" }],
    });
    expect(mannWhitney({ values: [1, 2, 3, 4, 5, 6, 7, 8], group: [1, 1, 1, 1, 2, 2, 2, 2] })).toMatchObject({ lower: -7, upper: -1 });
    expect(mannWhitney({ values: [1, 2], group: [1, 2], exact: false }).lower).toBeNull();
  });

  test("all values equal: nothing to test, no shift", () => {
    expect(mannWhitney({ values: [4, 4, 4, 4], group: [1, 1, 2, 2] })).toMatchObject({ estimate: 0, p: null, z: null });
  });

  test("a million values, and sizes of 1e-300 and 1e15", () => {
    const many = Array.from({ length: 1e6 }, (_, i) => (i * 7919) % 1000);
    const ours = mannWhitney({ values: many, group: many.map((_, i) => i % 2) });
    expect(Math.abs(ours.estimate as number)).toBeLessThanOrEqual(1);
    const base = two("mann-whitney-exact-hollander");
    const [x, y] = [numbers(check("mann-whitney-exact-hollander"), "x"), numbers(check("mann-whitney-exact-hollander"), "y")];
    for (const size of [1e-300, 1e15]) {
      const scaled = mannWhitney({ values: [...x, ...y].map((value) => value * size), group: [...x.map(() => 1), ...y.map(() => 2)] });
      expect((scaled.upper as number) / size).toBeCloseTo(base.upper as number, 9);
      expect(scaled.p).toBe(base.p);
    }
  });

  test("refuses", () => {
    expect(() => mannWhitney({ values: [], group: [] })).toThrow("mannWhitney requires at least one value, received 0");
    expect(() => mannWhitney({ values: [1, 2], group: [1] })).toThrow("mannWhitney requires group as long as values (2), received 1");
    expect(() => mannWhitney({ values: [1, 2, 3], group: [1, 2, 3] })).toThrow("mannWhitney requires two groups, received 3");
    expect(() => mannWhitney({ values: [1, Number.NaN], group: [1, 2] })).toThrow(
      "mannWhitney requires finite numbers in values, received NaN at 1",
    );
  });
});

describe("signed rank", () => {
  test("Hollander and Wolfe: exact p, pseudo-median and interval", () => {
    const { statistic, pGreater, p, estimate, lower, upper } = paired("signed-rank-exact-hollander");
    const ours = { V: statistic, p_one_sided_greater: pGreater, p_two_sided: p, pseudo_median: estimate, ci_lower: lower, ci_upper: upper };
    expectAsChecked("signed-rank-exact-hollander", ours);
  });

  test("zeros and ties", () => {
    const [all, normal] = [paired("signed-rank-zeros-ties"), paired("signed-rank-zeros-ties", { exact: false })];
    expectAsChecked("signed-rank-zeros-ties", { n_nonzero: all.n, V: all.statistic, p_exact: all.p, p_normal_cc: normal.p });
    expect(all.zeros).toBe(3);
    expect(normal.pGreater).toBeCloseTo((normal.p as number) / 2, 12);
    expect(normal.pLess).toBeGreaterThan(0.9);
  });

  test("the pseudo-median is that of the written-out means of pairs", () => {
    fc.assert(
      fc.property(small, (values) => {
        const kept = values.filter((value) => value !== 0);
        const all = kept.flatMap((one, i) => kept.slice(i).map((other) => (one + other) / 2)).sort((one, other) => one - other);
        const ours = signedRank({ values });
        if (kept.length === 0) expect(ours.estimate).toBeNull();
        else expect(ours.estimate).toBeCloseTo(((all[(all.length - 1) >> 1] as number) + (all[all.length >> 1] as number)) / 2, 12);
      }),
    );
  });

  test("five differences are too few for 95 %, six are enough", () => {
    expect(signedRank({ values: [1, 2, 3, 4, 5] })).toMatchObject({
      lower: null,
      upper: null,
      notes: [{ code: "too-few-for-interval", patients: 5 }],
    });
    expect(signedRank({ values: [1, 2, 3, 4, 5, 6] })).toMatchObject({ lower: 1, upper: 6 });
    expect(signedRank({ values: [1], exact: false }).lower).toBeNull();
  });

  test("nothing but zeros: nothing to test", () => {
    expect(signedRank({ values: [0, 0] })).toMatchObject({ estimate: null, p: null, n: 0, zeros: 2, notes: [{ code: "constant-values" }] });
  });

  test("a million differences", () => {
    const many = Array.from({ length: 1e6 }, (_, i) => ((i * 7919) % 1001) - 500.5);
    expect(Math.abs(signedRank({ values: many }).estimate as number)).toBeLessThan(1);
  });

  test("refuses", () => {
    expect(() => signedRank({ values: [] })).toThrow("signedRank requires at least one value, received 0");
    expect(() => signedRank({ values: [Number.POSITIVE_INFINITY] })).toThrow(
      "signedRank requires finite numbers in values, received Infinity at 0",
    );
    expect(() => signedRank({ values: [1], confidence: 0 })).toThrow("signedRank requires a confidence between 0 and 1, received 0");
  });
});

describe("Kruskal–Wallis", () => {
  const asked = (id: string) => {
    const groups = check(id).input.groups as readonly (readonly number[])[];
    return kruskalWallis({ values: groups.flat(), group: groups.flatMap((values, i) => values.map(() => i)) });
  };

  test("Hollander and Wolfe, and ties", () => {
    const plain = asked("kruskal-hollander");
    expectAsChecked("kruskal-hollander", { H: plain.statistic, df: plain.df, p: plain.p });
    const ties = asked("kruskal-ties-anova-welch");
    expectAsChecked("kruskal-ties-anova-welch", { H_tie_corrected: ties.statistic, H_p: ties.p });
  });

  test("of two groups it is the square of Mann–Whitney's z", () => {
    const [values, group] = [
      [3, 1, 4, 1, 5, 9, 2, 6],
      [1, 1, 1, 1, 2, 2, 2, 2],
    ];
    expect(kruskalWallis({ values, group }).statistic).toBeCloseTo((mannWhitney({ values, group }).z as number) ** 2, 12);
  });

  test("ties everywhere: nothing to test", () => {
    expect(kruskalWallis({ values: [2, 2, 2], group: [1, 2, 3] })).toMatchObject({
      statistic: null,
      p: null,
      notes: [{ code: "constant-values" }],
    });
  });

  test("refuses", () => {
    expect(() => kruskalWallis({ values: [1, 2], group: [1, 1] })).toThrow("kruskalWallis requires at least two groups, received 1");
    expect(() => kruskalWallis({ values: [1, 2], group: [1] })).toThrow("kruskalWallis requires group as long as values (2), received 1");
  });
});
