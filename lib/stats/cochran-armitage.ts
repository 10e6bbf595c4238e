import { normalTwoSided } from "./distributions";
import type { TestResult } from "./record";
import { requireCount, requireFinite, requireSameLength, requireSome } from "./require";

/**
 * Cochran–Armitage test for a trend of shares over ordered groups. The sign of the statistic (z) is that of the trend.
 * Armitage P. Biometrics 1955;11:375-386; Agresti A. Categorical Data Analysis, 2nd ed., 2002, section 5.3.5.
 * @param x events a group
 * @param n cases a group
 * @param scores the groups' places on a line, 1, 2, 3 … unless given
 * @throws RangeError below two groups, with unequal lengths, x above n, a group without cases, or equal scores throughout
 * @example cochranArmitage({ x: [1, 5, 9], n: [10, 10, 10] }).p.toFixed(5) // => "0.00035"
 */
export function cochranArmitage({
  x,
  n,
  scores = x.map((_, i) => i + 1),
}: {
  x: readonly number[];
  n: readonly number[];
  scores?: readonly number[];
}): TestResult & { readonly chiSquare: number | null } {
  requireGroups(x, n, scores);
  const cases = sum(n);
  const share = sum(x) / cases;
  const common = { n: cases, patients: null, method: "Cochran–Armitage trend test", convention: "variance by n, not n − 1" };
  if (share === 0 || share === 1) {
    return { ...common, statistic: null, df: 1, p: null, chiSquare: null, notes: [{ code: "constant-values" }] };
  }
  const middle = sum(n.map((m, i) => m * (scores[i] as number))) / cases;
  const from = scores.map((score) => score - middle);
  const trend = sum(x.map((events, i) => (from[i] as number) * (events - (n[i] as number) * share)));
  const variance = share * (1 - share) * sum(n.map((m, i) => m * (from[i] as number) ** 2));
  const statistic = trend / Math.sqrt(variance);
  return { ...common, statistic, df: 1, p: normalTwoSided(statistic), chiSquare: statistic ** 2, notes: [] };
}

function requireGroups(x: readonly number[], n: readonly number[], scores: readonly number[]): void {
  requireSome("cochranArmitage", "groups", x.length, 2);
  requireSameLength("cochranArmitage", "x", x.length, "n", n.length);
  requireSameLength("cochranArmitage", "x", x.length, "scores", scores.length);
  requireFinite("cochranArmitage", "scores", scores);
  n.forEach((cases, i) => {
    requireCount("cochranArmitage", "n", cases, 1);
    requireCount("cochranArmitage", "x", x[i] as number);
    if ((x[i] as number) > cases) throw new RangeError(`cochranArmitage requires x at most n, received ${x[i]} of ${cases} in group ${i}`);
  });
  if (scores.every((score) => score === scores[0])) throw new RangeError("cochranArmitage requires scores that differ, received one score");
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
