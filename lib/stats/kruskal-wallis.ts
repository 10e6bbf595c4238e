import { type GroupLabels, levelsOf } from "./cluster/groups";
import { chiSquareUpper } from "./distributions";
import { midranks } from "./ranks/midranks";
import type { TestResult } from "./record";
import { requireFinite, requireSameLength, requireSome } from "./require";

/**
 * Kruskal–Wallis test of two or more groups of unclustered values, corrected for ties.
 * Kruskal WH, Wallis WA. J Am Stat Assoc 1952;47:583-621.
 * @param group a label a value
 * @throws RangeError with fewer than two groups or unequal lengths; TypeError when a value isn't finite
 * @example kruskalWallis({ values: [1, 2, 3, 4], group: ["a", "a", "b", "b"] }).statistic?.toFixed(1) // => "2.4"
 */
export function kruskalWallis({ values, group }: { values: readonly number[]; group: GroupLabels }): TestResult {
  requireSome("kruskalWallis", "value", values.length);
  requireSameLength("kruskalWallis", "values", values.length, "group", group.length);
  requireFinite("kruskalWallis", "values", values);
  const levels = levelsOf(group);
  requireSome("kruskalWallis", "groups", levels.length, 2);
  const n = values.length;
  const df = levels.length - 1;
  const common = { n, patients: n, method: "Kruskal–Wallis test", convention: "chi-square approximation, corrected for ties" };
  const { ranks, tieSum } = midranks(values);
  if (tieSum === n ** 3 - n) return { ...common, statistic: null, df, p: null, notes: [{ code: "constant-values" }] };
  const sums = new Map(levels.map((label) => [label, { count: 0, sum: 0 }]));
  group.forEach((label, i) => {
    const own = sums.get(label) as { count: number; sum: number };
    own.count += 1;
    own.sum += ranks[i] as number;
  });
  const between = [...sums.values()].reduce((total, { count, sum }) => total + count * (sum / count - (n + 1) / 2) ** 2, 0);
  const statistic = ((12 / (n * (n + 1))) * between) / (1 - tieSum / (n ** 3 - n));
  return { ...common, statistic, df, p: chiSquareUpper(statistic, df), notes: [] };
}
