import { binomialCdf } from "./distributions/counts";
import type { Note } from "./notes";
import { requireConfidence, requireFinite, requireSome } from "./require";
import { quantileSorted, sortedCopy } from "./summary/order";

/**
 * The median of independent values with the interval between two order statistics that holds it with at least the confidence asked,
 * whatever the distribution. With several values a patient use patientBootstrap. Below six values there is no 95 % interval.
 * Conover WJ. Practical Nonparametric Statistics, 3rd ed., 1999, section 3.2.
 * @throws RangeError without values or with a confidence outside 0 to 1; TypeError when a value isn't finite
 * @example medianInterval({ values: [5, 1, 4, 2, 3, 6] }).lower // => 1
 */
export function medianInterval({ values, confidence = 0.95 }: { values: readonly number[]; confidence?: number }) {
  requireSome("medianInterval", "value", values.length);
  requireFinite("medianInterval", "values", values);
  requireConfidence("medianInterval", confidence);
  const sorted = sortedCopy(values);
  const n = sorted.length;
  const common = {
    estimate: quantileSorted(sorted, 0.5),
    se: null,
    df: null,
    n,
    patients: n,
    method: "median, interval between order statistics",
  };
  const rank = lowerRank(n, (1 - confidence) / 2);
  if (rank === 0) {
    const notes: Note[] = [{ code: "not-estimable", because: `${n} values are too few for an interval of the median` }];
    return { ...common, lower: null, upper: null, coverage: null, notes };
  }
  const coverage = 1 - 2 * binomialCdf(rank - 1, n, 0.5);
  return { ...common, lower: sorted[rank - 1] as number, upper: sorted[n - rank] as number, coverage, notes: [] as Note[] };
}

/** The greatest rank (from 1) that lies above the median with at most the tail's probability; 0 when even the least value does. */
function lowerRank(n: number, tail: number): number {
  let rank = 0;
  while (rank < n / 2 && binomialCdf(rank, n, 0.5) <= tail) rank++;
  return rank;
}
