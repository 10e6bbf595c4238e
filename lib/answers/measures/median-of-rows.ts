import { quantile } from "@/lib/stats";
import { medianInterval } from "../healing/median-interval";
import type { Median } from "../types";
import type { Row } from "./measured";

/** Median of rows that are all observed; with nothing censored its bounds are the median itself. */
export function medianOfRows(rows: readonly Row[]): Median {
  if (rows.length === 0) return { estimate: null, lower: null, upper: null, bounds: [null, null], notes: [] };
  const values = rows.map(({ value }) => value);
  const { estimate } = quantile({ values, p: 0.5 });
  const interval = medianInterval(
    values,
    rows.map(({ person }) => person),
  );
  return { estimate, ...interval, bounds: [estimate, estimate] };
}
