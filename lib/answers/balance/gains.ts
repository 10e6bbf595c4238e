import { meanOf, sampleDeviation } from "@/lib/stats";

/** Difference of two means over the pooled standard deviation; `null` where a group has fewer than two values or nothing varies. */
export function standardisedDifference(a: readonly number[], b: readonly number[]): number | null {
  const [left, right] = [sampleDeviation(a), sampleDeviation(b)];
  const [meanA, meanB] = [meanOf(a), meanOf(b)];
  if (left === null || right === null || meanA === null || meanB === null) return null;
  const spread = Math.sqrt((left ** 2 + right ** 2) / 2);
  return spread === 0 ? null : (meanA - meanB) / spread;
}
