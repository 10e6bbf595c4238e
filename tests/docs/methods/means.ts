import * as stats from "@/lib/stats";
import { storedAnswers } from "../../external/r-scripts";
import { check, numbers } from "../../external/stat-checks";
import { type Comparison, type Fields, idsOf, pick, withAnswer, withCheck } from "./comparison";

/** Fields of R's answers that are answers and not data. */
const answered = [
  "estimate",
  "se",
  "seLog",
  "df",
  "dfDenominator",
  "lower",
  "upper",
  "statistic",
  "p",
  "smallestP",
  "arrangements",
  "deff",
  "nEffective",
  "dispersion",
];

const methods: readonly (readonly [prefix: string, method: string, rename?: Readonly<Record<string, string>>])[] = [
  ["mean-", "cr2-mean"],
  ["plain-mean-", "plain-mean"],
  ["patient-mean-", "patient-mean"],
  ["ratio-", "ratio-of-sums"],
  ["difference-", "cr2-difference"],
  ["regression-", "cr2-regression"],
  ["wald-", "htz-wald"],
  ["share-", "wilson-clustered"],
  ["woodruff-", "woodruff-interval"],
  ["risk-ratio-", "risk-ratio", { values: "event" }],
  ["risk-difference-", "risk-difference", { values: "event" }],
  ["rate-ratio-", "rate-ratio", { values: "events" }],
  ["rate-epil", "event-rate"],
  ["exact-ratio-", "exact-rate-ratio"],
  ["paired-", "paired-t"],
  ["welch-", "welch"],
  ["sdd-", "smallest-detectable-difference"],
  ["exchange-", "permutation-difference"],
  ["signs-sleep", "sign-flip"],
];

/** Asks our method with the data that R's answer holds; a list where R answered one number a coefficient. */
function asR(method: string, id: string, rename: Readonly<Record<string, string>> = {}): Comparison[] {
  const whole = storedAnswers("means").answers[id] as Fields;
  const known = Object.keys(stats.listMethods().find((one) => one.id === method)?.input.properties ?? {});
  const input = Object.fromEntries(
    Object.entries(whole)
      .map(([field, value]) => [rename[field] ?? field, value] as const)
      .filter(([field]) => known.includes(field)),
  );
  // All arrangements are taken in these checks, so that the seed has no part in the answer.
  const ours = stats.runMethod(method, known.includes("seed") ? { ...input, seed: 1 } : input) as Fields;
  const coefficients = ours.coefficients as readonly Fields[] | undefined;
  // R answers the statistic of an exchange without its sign.
  const fields = answered.filter((field) => field in whole && !(field === "statistic" && method === "permutation-difference"));
  const held = fields.filter((field) => (coefficients ? (coefficients[0] as Fields) : ours)[field] !== undefined);
  return withAnswer(
    method,
    "means",
    id,
    Object.fromEntries(held.map((field) => [field, coefficients ? coefficients.map((one) => one[field]) : ours[field]])),
  );
}

function clustered(id: string): Comparison[] {
  const { y, cluster } = check(id).input as { y: string; cluster: string };
  const ours = stats.cr2Mean({ values: numbers(check(id), y), patient: numbers(check(id), cluster) });
  return withCheck("cr2-mean", id, pick(ours, { mean: "estimate", se_cr2: "se", cr2_df_satterthwaite: "df", N: "n", G: "patients" }));
}

function fitted(
  id: string,
  outcome: string,
  covariates: readonly string[],
  cluster: string | null,
  names: Fields,
  link: "identity" | "logit" = "identity",
) {
  const values = numbers(check(id), outcome);
  const design = values.map((_, i) => covariates.map((name) => numbers(check(id), name)[i] as number));
  const patient = cluster ? numbers(check(id), cluster) : values.map((_, i) => i);
  const { coefficients } = stats.cr2Regression({ values, design, patient, link });
  const ours = Object.fromEntries(
    Object.entries(names).map(([theirs, own]) => [theirs, coefficients.map((one) => (one as unknown as Fields)[own as string])]),
  );
  return withCheck("cr2-regression", id, ours);
}

/** Two groups without clusters: CR2 has Welch's error there, and one group against its pairs is the paired t. */
function students(): Comparison[] {
  const [a, b] = [numbers(check("t-welch-fixture"), "a"), numbers(check("t-welch-fixture"), "b")];
  const group = [...a.map(() => "a"), ...b.map(() => "b")];
  const mean = stats.plainMean({ values: a });
  const [one, other] = [numbers(check("t-darwin"), "a"), numbers(check("t-darwin"), "b")];
  const paired = stats.plainMean({ values: one.map((value, i) => value - (other[i] as number)) });
  const both = { values: [...a, ...b], group, patient: group.map((_, i) => i) };
  return [
    ...withCheck("plain-mean", "t-welch-fixture", pick(mean, { mean_a: "estimate", mean_a_ci_lower: "lower", mean_a_ci_upper: "upper" })),
    ...withCheck(
      "plain-mean",
      "t-darwin",
      pick(paired, { paired_mean_diff: "estimate", paired_df: "df", paired_ci_lower: "lower", paired_ci_upper: "upper" }),
    ),
    ...withCheck("cr2-difference", "t-welch-fixture", pick(stats.cr2Difference(both), { mean_diff: "estimate" })),
  ];
}

const quantiles = (["quantile-7-6", "quantile-even-ties"] as const).flatMap((id) => {
  const [values, ps] = [numbers(check(id), "x"), numbers(check(id), "p")];
  const of = (type: 6 | 7) => ps.map((p) => stats.quantile({ values, p, type }).estimate);
  return withCheck("quantile", id, { type7: of(7), type6: of(6) });
});

/** Mean squares of one-way analysis of variance, as certified by NIST. */
const certified = ["anova-nist-sirstv", "anova-nist-atmwtag"].flatMap((id) => {
  const groups = Object.values(check(id).input.groups as Readonly<Record<string, readonly number[]>>);
  const { betweenMeanSquare, withinMeanSquare } = stats.icc({
    values: groups.flat(),
    patient: groups.flatMap((values, g) => values.map(() => g)),
  });
  const [between, within] = [betweenMeanSquare as number, withinMeanSquare as number];
  return withCheck("icc", id, { ss_between: between * (groups.length - 1), F: between / within, residual_sd: Math.sqrt(within) });
});

const median = () => {
  const ours = stats.medianInterval({ values: numbers(check("median-ci-binomial"), "x") });
  return withCheck(
    "median-interval",
    "median-ci-binomial",
    pick(ours, { median: "estimate", lower: "lower", upper: "upper", coverage: "coverage" }),
  );
};

const smd = (["continuous", "binary", "levels"] as const).flatMap((kind) => {
  const { values, group } = storedAnswers("means").answers[`smd-${kind}`] as unknown as { values: number[]; group: number[] };
  return withAnswer(
    "standardised-difference",
    "means",
    `smd-${kind}`,
    pick(stats.standardisedDifference({ kind, values, group }), { estimate: "estimate" }),
  );
});

export const means: readonly Comparison[] = [
  ...methods.flatMap(([prefix, method, rename]) => idsOf("means", prefix).flatMap((id) => asR(method, id, rename))),
  ...clustered("cluster-mean-healing-index"),
  ...clustered("cluster-proportion-complication"),
  ...fitted("cluster-ols-healing-index", "healing_index", ["group", "age", "gain_cm"], "patient", {
    coef: "estimate",
    se_cr2: "se",
    df_cr2_satterthwaite: "df",
  }),
  ...fitted("cluster-ols-healing-index", "healing_index", ["group", "age", "gain_cm"], null, { se_hc2: "se" }),
  ...fitted("cluster-orthodont-ols", "distance", ["age", "male"], "id", { coef: "estimate", se_cr2: "se", df_cr2_satterthwaite: "df" }),
  ...fitted("ols-nist-longley", "y", ["x1", "x2", "x3", "x4", "x5", "x6"], null, { coef: "estimate" }),
  ...fitted("ols-nist-norris", "y", ["x"], null, { coef: "estimate" }),
  ...fitted("logit-spector-mazzeo", "grade", ["gpa", "tuce", "psi"], null, { coef: "estimate" }, "logit"),
  ...fitted("logit-oring", "fail", ["temp"], null, { coef: "estimate" }, "logit"),
  ...fitted("logit-registry-fixture", "complication", ["gain_cm", "group"], "patient", { coef: "estimate" }, "logit"),
  ...smd,
  ...median(),
  ...students(),
  ...quantiles,
  ...certified,
];
