import type { SegmentRow } from "@/lib/codebook";
import type { RowFact, SegmentCheck } from "./segment-fact";

const afterSurgery = [
  "distractionStartDay",
  "distractionEndDay",
  "lastNotHealedDay",
  "lastFilmDay",
  "rescueDay",
  "consolidationDay",
  "fullWeightBearingDay",
  "fixatorRemovalDay",
  "implantRemovalDay",
  "lastFollowUpDay",
] as const;

/** A date before the row's surgery that would fall after it with day and month exchanged. */
export const checkSwappedDays: SegmentCheck = (row, { swapped }) => {
  const found: RowFact[] = [];
  for (const field of afterSurgery) {
    const day = row[field];
    if (day === null || !isEarly(row, field, day)) continue;
    const other = swapped(field);
    if (other === null || isEarly(row, field, other)) continue;
    found.push({ code: "day-and-month-swapped", field, found: "a date out of order with the row’s other days" });
  }
  return found;
};

function isEarly(row: SegmentRow, field: (typeof afterSurgery)[number], day: number): boolean {
  const floor = field === "consolidationDay" && row.distractionEndDay !== null ? row.distractionEndDay : row.surgeryDay;
  return day < floor;
}
