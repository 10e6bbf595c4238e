import { requireFinite, requireProbability, requireSome } from "./require";
import { quantileSorted, sortedCopy } from "./summary/order";

/**
 * A quantile of values, type 7 or type 6 of Hyndman and Fan.
 * Hyndman RJ, Fan Y. Am Stat 1996;50:361-365.
 * @throws RangeError without values or when p lies outside 0 to 1; TypeError when a value is not a finite number
 * @example quantile({ values: [4, 1, 3, 2], p: 0.25 }).estimate // => 1.75
 */
export function quantile({ values, p, type = 7 }: { values: readonly number[]; p: number; type?: 6 | 7 }) {
  requireSome("quantile", "value", values.length);
  requireFinite("quantile", "values", values);
  requireProbability("quantile", "p", p);
  if (type !== 6 && type !== 7) throw new RangeError(`quantile requires type 6 or 7, received ${type}`);
  return {
    estimate: quantileSorted(sortedCopy(values), p, type),
    n: values.length,
    method: `sample quantile at ${p}`,
    convention: `Hyndman–Fan type ${type}`,
    notes: [],
  } as const;
}
