import { normalQuantile } from "../distributions/normal";

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
  const rows = values.map((value, row) => ({ row, value, observed: event[row] === 1 }));
  // of equal values those that were observed come first
  rows.sort((a, b) => a.value - b.value || Number(b.observed) - Number(a.observed));
  const points: NormalPoint[] = [];
  let above = 1;
  for (let at = 0, end = 0; at < rows.length; at = end) {
    const { value, observed } = rows[at] as (typeof rows)[number];
    while (end < rows.length && rows[end]?.value === value && rows[end]?.observed === observed) end++;
    if (!observed) continue;
    const after = above * (1 - (end - at) / (rows.length - at));
    const normal = normalQuantile(1 - (above + after) / 2);
    points.push(...rows.slice(at, end).map(({ row }) => ({ row, value, normal })));
    above = after;
  }
  return points;
}
