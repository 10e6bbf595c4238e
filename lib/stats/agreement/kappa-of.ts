export type KappaWeights = "unweighted" | "linear" | "quadratic";

/** How far apart two classes of k are, from 0 (the same) to 1 (the ends). */
export function disagreements(k: number, weights: KappaWeights): Float64Array {
  const apart = (i: number, j: number) => Math.abs(i - j) / (k - 1);
  const of = {
    unweighted: (i: number, j: number) => (i === j ? 0 : 1),
    linear: apart,
    quadratic: (i: number, j: number) => apart(i, j) ** 2,
  };
  return Float64Array.from({ length: k * k }, (_, at) => of[weights](Math.floor(at / k), at % k));
}

/** 1 − seen/expected disagreement of a k × k table of counts (by rows); null when no disagreement is possible by its margins. */
export function kappaOf(counts: Float64Array, weights: Float64Array, k: number) {
  const rows = new Float64Array(k);
  const columns = new Float64Array(k);
  let n = 0;
  counts.forEach((count, at) => {
    rows[Math.floor(at / k)] = (rows[Math.floor(at / k)] as number) + count;
    columns[at % k] = (columns[at % k] as number) + count;
    n += count;
  });
  let [seen, expected] = [0, 0];
  weights.forEach((weight, at) => {
    seen += (weight * (counts[at] as number)) / n;
    expected += (weight * (rows[Math.floor(at / k)] as number) * (columns[at % k] as number)) / (n * n);
  });
  return { kappa: expected > 0 ? 1 - seen / expected : null, seen, expected };
}
