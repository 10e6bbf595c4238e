import { normalQuantile } from "./distributions";
import type { Note } from "./notes";
import { pairMeansAtMost } from "./ranks/kth-value";
import { type Counted, kthOf, medianOf } from "./ranks/located";
import { midranks } from "./ranks/midranks";
import { normalTails } from "./ranks/normal-tails";
import { quantileOfSums, sumsOfSigns, tailsOf } from "./ranks/sum-distribution";
import type { Estimate } from "./record";
import { requireConfidence, requireFinite, requireSome } from "./require";
import { sortedCopy } from "./summary/order";

/** Below this many differences all signs are counted. */
const exactBelow = 50;

export interface SignedRankInput {
  readonly values: readonly number[];
  /** All signs or the normal approximation; by the number of values unless said. */
  readonly exact?: boolean;
  readonly confidence?: number;
}

/** `estimate`, `lower`, `upper`: the pseudo-median; `n` counts the differences that aren't zero. */
export interface SignedRank extends Estimate {
  readonly statistic: number | null;
  readonly p: number | null;
  readonly pLess: number | null;
  readonly pGreater: number | null;
  readonly zeros: number;
}

/**
 * Wilcoxon signed-rank test of differences, one a patient, with the Hodges–Lehmann pseudo-median (median of the means of all pairs).
 * Zeros are left out before ranking (Wilcoxon's rule), equal sizes share midranks. `statistic` is V, the sum of the ranks of positive differences.
 * p is exact below 50 differences (all signs, ties included), otherwise normal with ties and continuity correction.
 * The interval is read off the ordered means of pairs at the ranks that hold without ties; null when there are too few differences.
 * Wilcoxon F. Biometrics Bull 1945;1:80-83; Hollander M, Wolfe DA. Nonparametric Statistical Methods 1973, chapter 3.
 * @param values differences
 * @throws RangeError without values or with a confidence outside 0 to 1; TypeError when a value isn't finite
 * @example signedRank({ values: [1, 2, 3] }).statistic // => 6
 */
export function signedRank({ values, exact, confidence = 0.95 }: SignedRankInput): SignedRank {
  requireSome("signedRank", "value", values.length);
  requireFinite("signedRank", "values", values);
  requireConfidence("signedRank", confidence);
  const kept = values.filter((value) => value !== 0);
  const inFull = exact ?? kept.length < exactBelow;
  const common = {
    se: null,
    df: null,
    n: kept.length,
    patients: values.length,
    zeros: values.length - kept.length,
    method: "Wilcoxon signed-rank test with the pseudo-median",
    convention: `zeros left out, ${inFull ? "exact over all signs" : "normal with tie and continuity correction"}`,
  };
  if (kept.length === 0) {
    const nothing = { estimate: null, lower: null, upper: null, statistic: null, p: null, pLess: null, pGreater: null };
    return { ...nothing, ...common, notes: [{ code: "constant-values" }] };
  }
  const means = pairMeansOf(kept);
  const rank = limitRank(kept.length, 1 - confidence, inFull);
  return {
    estimate: medianOf(means),
    lower: rank === null ? null : kthOf(means, rank),
    upper: rank === null ? null : kthOf(means, means.count + 1 - rank),
    ...signTest(kept, inFull),
    ...common,
    notes: rank === null ? ([{ code: "too-few-for-interval", patients: values.length }] satisfies Note[]) : [],
  };
}

function signTest(kept: readonly number[], inFull: boolean) {
  const { ranks, tieSum } = midranks(kept.map(Math.abs));
  const n = kept.length;
  const statistic = kept.reduce((sum, value, i) => sum + (value > 0 ? (ranks[i] as number) : 0), 0);
  if (inFull) {
    const { twoSided, less, greater } = tailsOf(sumsOfSigns(ranks), (n * (n + 1)) / 4, statistic);
    return { statistic, p: twoSided, pLess: less, pGreater: greater };
  }
  const from = statistic - (n * (n + 1)) / 4;
  const deviation = Math.sqrt((n * (n + 1) * (2 * n + 1)) / 24 - tieSum / 48);
  return { statistic, ...normalTails(from, deviation) };
}

function limitRank(n: number, alpha: number, inFull: boolean): number | null {
  const pairs = (n * (n + 1)) / 2;
  const rank = inFull
    ? quantileOfSums(sumsOfSigns(Float64Array.from({ length: n }, (_, i) => i + 1)), alpha / 2)
    : Math.floor(pairs / 2 - normalQuantile(1 - alpha / 2) * Math.sqrt((n * (n + 1) * (2 * n + 1)) / 24));
  return rank >= 1 ? rank : null;
}

function pairMeansOf(values: readonly number[]): Counted {
  const sorted = sortedCopy(values);
  const count = (sorted.length * (sorted.length + 1)) / 2;
  return { count, least: sorted[0] as number, most: sorted.at(-1) as number, atMost: (t) => pairMeansAtMost(sorted, t) };
}
