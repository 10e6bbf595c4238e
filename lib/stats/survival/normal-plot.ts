import { normalQuantile } from "../distributions/normal";
import { rowsInOrder } from "./sort-rows";

/** An observed value beside the value that a normal distribution would have in its place. */
export interface NormalPoint {
  readonly row: number;
  readonly value: number;
  readonly normal: number;
}

/**
 * Normal q–q plot of values of which some are only known to be larger (`event` 0): each observed one against the normal quantile at the middle
 * of its step of the product-limit curve; with every value observed that is (i − ½)/n. Rising.
 * Hazen A. Trans Am Soc Civ Eng 1914;77:1539-1640 (the middles); Kaplan EL, Meier P. J Am Stat Assoc 1958;53:457-481.
 * @param event 1: observed; 0: larger than the value
 */
export function normalPlot({
  values,
  event,
}: {
  readonly values: readonly number[];
  readonly event: readonly number[];
}): readonly NormalPoint[] {
  const order = rowsInOrder(values);
  const n = order.length;
  const points: NormalPoint[] = [];
  let above = 1;
  for (let at = 0, end = 0; at < n; at = end) {
    const value = values[order[at] as number] as number;
    while (end < n && values[order[end] as number] === value) end++;
    // of equal values those that were observed come first
    const observed = order.subarray(at, end).filter((row) => event[row] === 1);
    if (observed.length === 0) continue;
    const after = above * (1 - observed.length / (n - at));
    const normal = normalQuantile(1 - (above + after) / 2);
    for (const row of observed) points.push({ row, value, normal });
    above = after;
  }
  return points;
}
