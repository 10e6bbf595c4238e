import { fieldOf } from "@/lib/codebook";
import type { RowFact, SegmentCheck } from "./segment-fact";

type DayOf = "surgeryDay" | "distractionStartDay" | "distractionEndDay" | "consolidationDay";

/** Pairs that must stand in this order; the second is the one to look at. */
const orders: readonly (readonly [DayOf, DayOf])[] = [
  ["surgeryDay", "distractionStartDay"],
  ["distractionStartDay", "distractionEndDay"],
  ["surgeryDay", "distractionEndDay"],
  ["surgeryDay", "consolidationDay"],
];

/** Surgery, start and end of distraction in this order, and no bone healed before it was cut (codebook.md, order of days). */
export const checkOrderOfDays: SegmentCheck = (row) => {
  const found: RowFact[] = [];
  for (const [first, then] of orders) {
    const before = row[first];
    const after = row[then];
    if (before === null || after === null || before <= after || found.some(({ field }) => field === then)) continue;
    const names = { first: labelOf(first), second: labelOf(then) };
    found.push({
      code: "days-out-of-order",
      field: then,
      found: `${names.second} ${before - after} days before ${names.first}`,
      about: names,
    });
  }
  return found;
};

export function labelOf(field: string): string {
  const label = fieldOf("segment", field).label;
  return label.charAt(0).toLowerCase() + label.slice(1);
}
