import * as stats from "@/lib/stats";
import { check, checksOf, numbers } from "../../external/stat-checks";
import { type Comparison, pick, withCheck } from "./comparison";

const limits = { lower: "lower", upper: "upper" };
const input = (id: string) => check(id).input as Readonly<Record<string, number>>;
const columns = (rows: readonly object[], names: readonly string[]) =>
  Object.fromEntries(names.map((name) => [name, rows.map((row) => (row as Readonly<Record<string, unknown>>)[name])]));

const single = [
  ...checksOf("prop-wilson-")
    .filter(({ input: { confidence } }) => !Array.isArray(confidence))
    .map(({ id }) => ["wilson", id, stats.wilson] as const),
  ...checksOf("prop-clopper-pearson-").map(({ id }) => ["clopper-pearson", id, stats.clopperPearson] as const),
].flatMap(([method, id, ask]) => withCheck(method, id, pick(ask({ x: input(id).x as number, n: input(id).n as number }), limits)));

function grid(method: string, id: string, ask: (one: { x: number; n: number }) => object): Comparison[] {
  const [x, n] = [numbers(check(id), "x"), numbers(check(id), "n")];
  return withCheck(
    method,
    id,
    columns(
      x.map((_, i) => ask({ x: x[i] as number, n: n[i] as number })),
      ["lower", "upper"],
    ),
  );
}

const levels = numbers(check("prop-wilson-90-99"), "confidence").map((confidence) => stats.wilson({ x: 7, n: 41, confidence }));

const differences = checksOf("propdiff-newcombe10").flatMap(({ id }) => {
  const { x1, n1, x2, n2 } = input(id) as { x1: number; n1: number; x2: number; n2: number };
  return withCheck("newcombe-difference", id, pick(stats.newcombeDifference({ x1, n1, x2, n2 }), { difference: "estimate", ...limits }));
});

const garwoodFields = { rate: "estimate", ...limits };
const perCm = (id: string) => stats.garwood({ events: input(id).events as number, exposure: input(id).exposure_cm as number });
const segments = input("poisson-rate-per-100-segments") as { events: number; segments: number; per: number };
const ratio = input("rate-ratio-exact") as { events1: number; exposure1: number; events2: number; exposure2: number };
const table = (id: string) => (check(id).input.table ?? check(id).input.table_rows) as readonly (readonly number[])[];
const fisher = {
  "fisher-tea": { p_two_sided: "p", p_greater: "pGreater", conditional_mle_or: "estimate", or_lower: "lower", or_upper: "upper" },
  "fisher-convictions": { p_two_sided: "p", p_less: "pLess" },
  "fisher-zero-cell": { p_two_sided: "p", or_estimate: "estimate", or_upper: "upper" },
  "fisher-rxc-job": { p: "p" },
  "fisher-rxc-3x3": { p: "p" },
  "fisher-rxc-2x3-zero": { p: "p" },
};
const trend = (id: string) =>
  stats.cochranArmitage({ x: numbers(check(id), "events"), n: numbers(check(id), "totals"), scores: numbers(check(id), "scores") });

export const shares: readonly Comparison[] = [
  ...single,
  ...grid("wilson", "prop-grid-wilson", stats.wilson),
  ...grid("clopper-pearson", "prop-grid-clopper-pearson", stats.clopperPearson),
  ...withCheck("wilson", "prop-wilson-90-99", columns(levels, ["lower", "upper"])),
  ...differences,
  ...withCheck(
    "garwood",
    "poisson-exact-count",
    columns(
      numbers(check("poisson-exact-count"), "count").map((events) => stats.garwood({ events })),
      ["lower", "upper"],
    ),
  ),
  ...["poisson-rate-per-cm", "poisson-rate-zero-events"].flatMap((id) => withCheck("garwood", id, pick(perCm(id), garwoodFields))),
  ...withCheck(
    "garwood",
    "poisson-rate-per-100-segments",
    pick(stats.garwood({ events: segments.events, exposure: segments.segments, per: 100 }), garwoodFields),
  ),
  ...withCheck(
    "exact-rate-ratio",
    "rate-ratio-exact",
    pick(stats.exactRateRatio({ events1: ratio.events1, exposure1: ratio.exposure1, events2: ratio.events2, exposure2: ratio.exposure2 }), {
      rate_ratio: "estimate",
      exact_lower: "lower",
      exact_upper: "upper",
      exact_p_two_sided: "p",
    }),
  ),
  ...Object.entries(fisher).flatMap(([id, names]) => withCheck("fisher-exact", id, pick(stats.fisherExact({ table: table(id) }), names))),
  ...["chisq-2x2-a", "chisq-2x2-b", "chisq-2x2-yates-cap"].flatMap((id) =>
    withCheck("chi-square", id, {
      ...pick(stats.chiSquare({ table: table(id) }), { chisq_uncorrected: "statistic", p_uncorrected: "p", df: "df" }),
      ...pick(stats.chiSquare({ table: table(id), continuity: true }), { chisq_yates: "statistic", p_yates: "p" }),
    }),
  ),
  ...withCheck(
    "chi-square",
    "chisq-rxc-agresti",
    pick(stats.chiSquare({ table: table("chisq-rxc-agresti") }), { chisq: "statistic", df: "df", p: "p", cramers_v: "cramersV" }),
  ),
  ...withCheck(
    "cochran-armitage",
    "cochran-armitage-agresti",
    pick(trend("cochran-armitage-agresti"), { chisq_cochran_armitage: "chiSquare", z: "statistic", p: "p" }),
  ),
  ...withCheck("cochran-armitage", "cochran-armitage-smokers", pick(trend("cochran-armitage-smokers"), { chisq: "chiSquare", p: "p" })),
];
