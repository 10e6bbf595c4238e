import * as stats from "@/lib/stats";
import { storedAnswers } from "../../external/r-scripts";
import { check, numbers } from "../../external/stat-checks";
import { type Comparison, type Fields, idsOf, pick, withAnswer, withCheck } from "./comparison";

type Table = readonly (readonly number[])[];
const answer = (id: string) => storedAnswers("agreement").answers[id] as Readonly<Record<string, unknown>>;

function ranks(): Comparison[] {
  const two = (id: string, options: { exact?: boolean } = {}) => {
    const [x, y] = [numbers(check(id), "x"), numbers(check(id), "y")];
    return stats.mannWhitney({ values: [...x, ...y], group: [...x.map(() => "x"), ...y.map(() => "y")], ...options });
  };
  const paired = (id: string, options: { exact?: boolean } = {}) => {
    const [x, y] = [numbers(check(id), "x"), numbers(check(id), "y")];
    return stats.signedRank({ values: x.map((value, i) => value - (y[i] as number)), ...options });
  };
  const groups = (id: string) => check(id).input.groups as Table;
  const several = (id: string) =>
    stats.kruskalWallis({ values: groups(id).flat(), group: groups(id).flatMap((values, g) => values.map(() => g)) });
  const limits = { p_two_sided: "p", p_one_sided_greater: "pGreater", ci_lower: "lower", ci_upper: "upper" };
  return [
    ...withCheck(
      "mann-whitney",
      "mann-whitney-exact-hollander",
      pick(two("mann-whitney-exact-hollander"), { W_first_sample: "statistic", hodges_lehmann_shift: "estimate", ...limits }),
    ),
    ...withCheck(
      "mann-whitney",
      "mann-whitney-ties",
      pick(two("mann-whitney-ties"), { U: "statistic", z_nocc: "z", p_exact_permutation: "p" }),
    ),
    ...withCheck("mann-whitney", "mann-whitney-ties", pick(two("mann-whitney-ties", { exact: false }), { p_normal_cc: "p" })),
    ...withCheck(
      "signed-rank",
      "signed-rank-exact-hollander",
      pick(paired("signed-rank-exact-hollander"), { V: "statistic", pseudo_median: "estimate", ...limits }),
    ),
    ...withCheck(
      "signed-rank",
      "signed-rank-zeros-ties",
      pick(paired("signed-rank-zeros-ties"), { n_nonzero: "n", V: "statistic", p_exact: "p" }),
    ),
    ...withCheck("signed-rank", "signed-rank-zeros-ties", pick(paired("signed-rank-zeros-ties", { exact: false }), { p_normal_cc: "p" })),
    ...withCheck("kruskal-wallis", "kruskal-hollander", pick(several("kruskal-hollander"), { H: "statistic", df: "df", p: "p" })),
    ...withCheck(
      "kruskal-wallis",
      "kruskal-ties-anova-welch",
      pick(several("kruskal-ties-anova-welch"), { H_tie_corrected: "statistic", H_p: "p" }),
    ),
  ];
}

function alike(): Comparison[] {
  const names = {
    icc: "estimate",
    msb: "betweenMeanSquare",
    msw: "withinMeanSquare",
    n0: "typicalSize",
    deff_weighted_size: "designEffect",
    deff_mean_size: "designEffectMeanSize",
  };
  return [
    "cluster-icc-healing-index",
    "cluster-icc-complication",
    "cluster-orthodont-icc",
    "icc-shrout-fleiss",
    "edge-icc-negative",
  ].flatMap((id) => {
    const { input } = check(id);
    const column = (field: string) => numbers(check(id), Array.isArray(input[field]) ? field : String(input[field]));
    return withCheck("icc", id, pick(stats.icc({ values: column("y"), patient: column("cluster") }), names));
  });
}

function limitsOfAgreement(): Comparison[] {
  const [a, b] = [numbers(check("bland-altman-full-precision"), "a"), numbers(check("bland-altman-full-precision"), "b")];
  const ours = stats.blandAltman({ values: a.map((value, i) => value - (b[i] as number)), patient: a.map((_, i) => i) });
  const shared = {
    ...pick(ours, { mean_diff: "estimate", bias_ci_lower: "lower", bias_ci_upper: "upper" }),
    sd_diff: Math.sqrt(ours.between + ours.within),
  };
  const parts = idsOf("agreement", "reml-").flatMap((id) => {
    const { values, patient } = answer(id) as { values: number[]; patient: string[] };
    const found = stats.blandAltman({ values, patient });
    const ends = (interval: { lower: number; upper: number } | null) => interval && [interval.lower, interval.upper];
    return withAnswer("bland-altman", "agreement", id, {
      ...pick(found, { between: "between", within: "within", variance_df: "varianceDf", limit_se: "limitSe" }),
      limit_lower_ci: ends(found.limitLowerInterval),
      limit_upper_ci: ends(found.limitUpperInterval),
    });
  });
  return [
    ...withCheck("bland-altman", "bland-altman-1986-pefr", { mean_diff: ours.estimate, sd_diff: shared.sd_diff }),
    ...withCheck("bland-altman", "bland-altman-full-precision", {
      ...shared,
      loa_lower: ours.limitLower,
      loa_upper: ours.limitUpper,
      se_loa_1999: ours.limitSe,
    }),
    ...parts,
  ];
}

function kappas(): Comparison[] {
  const of = (table: Table, weights: "unweighted" | "linear" | "quadratic") => {
    const rows = table.flatMap((row, i) => row.flatMap((count, j) => Array.from({ length: count }, () => [i, j] as const)));
    const rated = { first: rows.map(([i]) => i), second: rows.map(([, j]) => j), patient: rows.map((_, i) => i) };
    return stats.weightedKappa({ ...rated, classes: table.length, weights, seed: 1, repeats: 2 }).estimate;
  };
  const weightings = ["unweighted", "linear", "quadratic"] as const;
  return [
    ...withCheck("weighted-kappa", "kappa-cohen-1968", { unweighted: of(check("kappa-cohen-1968").input.table as Table, "unweighted") }),
    ...idsOf("agreement", "kappa-").flatMap((id) =>
      withAnswer("weighted-kappa", "agreement", id, Object.fromEntries(weightings.map((one) => [one, of(answer(id).table as Table, one)]))),
    ),
  ];
}

const firth = idsOf("agreement", "firth-").flatMap((id) => {
  const { design, event } = answer(id) as { design: number[][]; event: number[] };
  const { coefficients } = stats.firthLogistic({ design, event });
  const fields = ["estimate", "se", "lower", "upper", "statistic", "p"] as const;
  return withAnswer(
    "firth-logistic",
    "agreement",
    id,
    Object.fromEntries(fields.map((field) => [field, coefficients.map((one) => one[field])])),
  );
});

function growth(): Comparison[] {
  const weight = check("lms-cdc-weight-9mo").input as unknown as { L: number; M: number; S: number };
  const table = [{ at: 9.5, L: weight.L, M: weight.M, S: weight.S }];
  const edge = check("lms-edge-L0-L1").input as unknown as { M: number; S: number; x: number };
  const tables = numbers(check("lms-edge-L0-L1"), "L").map((L) => [{ at: 0, L, M: edge.M, S: edge.S }]);
  const found = numbers(check("lms-cdc-weight-9mo"), "x").map((value) => stats.lms({ value, at: 9.5, table }));
  const back = (z: number, rows: typeof table, at: number) => stats.lmsInverse({ z, at, table: rows }).value;
  return [
    ...withCheck("lms", "lms-cdc-weight-9mo", { z: found.map(({ z }) => z), "centile_of_9.7": found[0]?.centile }),
    ...withCheck("lms-inverse", "lms-cdc-weight-9mo", { value_at_p5: back(stats.normalQuantile(0.05), table, 9.5) }),
    ...withCheck("lms", "lms-edge-L0-L1", { z: tables.map((rows) => stats.lms({ value: edge.x, at: 0, table: rows }).z) }),
    ...withCheck("lms-inverse", "lms-edge-L0-L1", { value_at_z_minus2: tables.map((rows) => back(-2, rows, 0)) }),
  ];
}

const adjusted = (id: string): Fields => ({ holm: stats.holm({ p: numbers(check(id), "p") }).adjusted });

export const agreement: readonly Comparison[] = [
  ...ranks(),
  ...alike(),
  ...limitsOfAgreement(),
  ...kappas(),
  ...firth,
  ...growth(),
  ...["padjust-bh1995", "padjust-unsorted-ties"].flatMap((id) => withCheck("holm", id, adjusted(id))),
];
