import type { DateOrder } from "../types";
import { datePartsOf } from "./date-parts";

/** What a file's dates say of their order: how many can only be day first, only month first, or either. */
export type OrderEvidence = { dayFirst: number; monthFirst: number; either: number };

export function noEvidence(): OrderEvidence {
  return { dayFirst: 0, monthFirst: 0, either: 0 };
}

/** Adds what a cell says that stands some times. A day equal to its month says nothing, and harms nothing. */
export function weigh(cell: string, evidence: OrderEvidence, times = 1): void {
  const parts = datePartsOf(cell);
  if (parts?.kind !== "open" || parts.a === parts.b) return;
  if (parts.a > 12 && parts.b <= 12) evidence.dayFirst += times;
  else if (parts.b > 12 && parts.a <= 12) evidence.monthFirst += times;
  else if (parts.a <= 12 && parts.b <= 12) evidence.either += times;
}

/**
 * The order that the dates prove; `"unknown"` where it must be asked for. A few dates against many are slips, found again as impossible
 * dates; where both orders are proved about as often, nobody but the person can know.
 */
export function orderOf({ dayFirst, monthFirst, either }: OrderEvidence): Exclude<DateOrder, "ymd"> | "none-needed" | "unknown" {
  if (dayFirst === 0 && monthFirst === 0) return either === 0 ? "none-needed" : "unknown";
  const [more, fewer] = [Math.max(dayFirst, monthFirst), Math.min(dayFirst, monthFirst)];
  if (fewer * 10 > more) return "unknown";
  return dayFirst > monthFirst ? "dmy" : "mdy";
}
