import { type GroupLabels, pairOf } from "./cluster/groups";
import { normalQuantile } from "./distributions";
import type { Note } from "./notes";
import { differencesAtMost } from "./ranks/kth-value";
import { type Counted, kthOf, medianOf } from "./ranks/located";
import { midranks } from "./ranks/midranks";
import { normalTails } from "./ranks/normal-tails";
import { quantileOfSums, sumsOfDraws, tailsOf } from "./ranks/sum-distribution";
import type { Estimate } from "./record";
import { requireConfidence, requireFinite, requireSameLength, requireSome } from "./require";
import { sortedCopy } from "./summary/order";

/** Up to this many values in each group all arrangements are counted. */
const exactBelow = 50;

export interface MannWhitneyInput {
  readonly values: readonly number[];
  readonly group: GroupLabels;
  readonly between?: readonly [string | number, string | number];
  /** All arrangements or the normal approximation; by the number of values unless said. */
  readonly exact?: boolean;
  readonly confidence?: number;
}

/** `estimate`, `lower`, `upper`: the shift. */
export interface MannWhitney extends Estimate {
  readonly statistic: number;
  readonly z: number | null;
  readonly p: number | null;
  readonly pLess: number | null;
  readonly pGreater: number | null;
}

/**
 * Mann–Whitney test of two groups of unclustered values, with the Hodges–Lehmann shift (median of all differences, first group − second).
 * `statistic` is U of the first group: pairs in which its value is the larger, ties counting half. p is exact when both groups hold fewer than
 * 50 values, ties included (midranks, all arrangements, P(|U − middle| at least as seen)); otherwise normal with ties and continuity correction.
 * The interval is read off the ordered differences at the ranks that hold without ties; null when the groups are too small for the confidence.
 * Mann HB, Whitney DR. Ann Math Stat 1947;18:50-60; Hodges JL, Lehmann EL. Ann Math Stat 1963;34:598-611; Hollander, Wolfe 1973 chapter 4.
 * @param between the two groups, first minus second; left out, the order in which two groups occur. Rows of other groups take no part
 * @throws RangeError without values, when there aren't two groups, with unequal lengths or a confidence outside 0 to 1; TypeError when a value isn't finite
 * @example mannWhitney({ values: [1, 2, 3, 4], group: ["a", "a", "b", "b"] }).estimate // => -2
 */
export function mannWhitney({ values, group, between, exact, confidence = 0.95 }: MannWhitneyInput): MannWhitney {
  requireConfidence("mannWhitney", confidence);
  requireSome("mannWhitney", "value", values.length);
  requireSameLength("mannWhitney", "values", values.length, "group", group.length);
  requireFinite("mannWhitney", "values", values);
  const pair = pairOf("mannWhitney", group, between);
  const [first, second] = pair.map((label) => values.filter((_, i) => group[i] === label)) as [number[], number[]];
  const [m, n] = [first.length, second.length];
  const inFull = exact ?? (m < exactBelow && n < exactBelow);
  const test = rankTest([...first, ...second], m, inFull);
  const differences = differencesOf(first, second);
  const rank = limitRank(m, n, 1 - confidence, inFull);
  return {
    estimate: medianOf(differences),
    se: null,
    df: null,
    lower: rank === null ? null : kthOf(differences, rank),
    upper: rank === null ? null : kthOf(differences, m * n + 1 - rank),
    ...test,
    n: m + n,
    patients: m + n,
    method: "Mann–Whitney test with the Hodges–Lehmann shift",
    convention: inFull ? "exact, all arrangements of midranks" : "normal with tie and continuity correction",
    notes: notesOf(test.p, rank, m + n),
  };
}

function rankTest(values: readonly number[], m: number, inFull: boolean) {
  const { ranks, tieSum } = midranks(values);
  const [total, n] = [values.length, values.length - m];
  let sum = 0;
  for (let i = 0; i < m; i++) sum += ranks[i] as number;
  const statistic = sum - (m * (m + 1)) / 2;
  const variance = ((m * n) / 12) * (total + 1 - tieSum / (total * (total - 1)));
  // All values equal: the variance is zero up to rounding, and there is nothing to test.
  if (tieSum === total ** 3 - total) return { statistic, z: null, p: null, pLess: null, pGreater: null };
  const from = statistic - (m * n) / 2;
  const z = from / Math.sqrt(variance);
  if (inFull) {
    const { twoSided, less, greater } = tailsOf(sumsOfDraws(ranks, m), (m * (total + 1)) / 2, sum);
    return { statistic, z, p: twoSided, pLess: less, pGreater: greater };
  }
  return { statistic, z, ...normalTails(from, Math.sqrt(variance)) };
}

/** Rank (from 1) of the difference that is the lower limit, without ties; null when even the outermost ones don't reach the confidence. */
function limitRank(m: number, n: number, alpha: number, inFull: boolean): number | null {
  if (!inFull) {
    const rank = Math.floor((m * n) / 2 - normalQuantile(1 - alpha / 2) * Math.sqrt((m * n * (m + n + 1)) / 12));
    return rank >= 1 ? rank : null;
  }
  const ranks = Float64Array.from({ length: m + n }, (_, i) => i + 1);
  const rank = quantileOfSums(sumsOfDraws(ranks, m), alpha / 2) - (m * (m + 1)) / 2;
  return rank >= 1 ? rank : null;
}

function differencesOf(first: readonly number[], second: readonly number[]): Counted {
  const [a, b] = [sortedCopy(first), sortedCopy(second)];
  const least = (a[0] as number) - (b.at(-1) as number);
  const most = (a.at(-1) as number) - (b[0] as number);
  return { count: a.length * b.length, least, most, atMost: (t) => differencesAtMost(a, b, t) };
}

function notesOf(p: number | null, rank: number | null, patients: number): Note[] {
  const notes: Note[] = [];
  if (p === null) notes.push({ code: "constant-values" });
  if (rank === null) notes.push({ code: "too-few-for-interval", patients });
  return notes;
}
