import type { SegmentRow } from "@/lib/codebook";
import { between, outside, type RowFact, type SegmentCheck } from "./segment-fact";

const usualRates: Readonly<Record<string, readonly [number, number]>> = { femur: [0.5, 1.5], tibia: [0.33, 1.25] };

/** Latency: usually 3-14 days, possible 0-45. */
export const checkLatency: SegmentCheck = (row) => {
  const days = between(row.surgeryDay, row.distractionStartDay);
  const place = { field: "distractionStartDay", what: "latency", unit: "days" };
  if (days === null || days < 0) return [];
  const hard = outside("out-of-hard-range", days, [0, 45], place);
  return hard.length > 0 ? hard : outside("out-of-usual-range", days, [3, 14], place);
};

/** Distraction: usually 7-240 days, at most 730. */
export const checkDistractionTime: SegmentCheck = (row) => {
  const days = between(row.distractionStartDay, row.distractionEndDay);
  const place = { field: "distractionEndDay", what: "distraction", unit: "days" };
  if (days === null || days < 0) return [];
  const hard = outside("out-of-hard-range", days, [0, 730], place);
  return hard.length > 0 ? hard : outside("out-of-usual-range", days, [7, 240], place);
};

/** The rate prescribed, and that of the course (gain ÷ days of distraction), each against what is usual for the bone; never sets aside. */
export const checkRate: SegmentCheck = (row) => {
  const usual = usualRates[row.bone];
  if (!usual) return [];
  const prescribed = outside("out-of-usual-range", row.prescribedRateMmPerDay, usual, {
    field: "prescribedRateMmPerDay",
    what: "prescribed rate",
    unit: "mm/day",
  });
  return [...prescribed, ...rateOfCourse(row, usual)];
};

function rateOfCourse(row: SegmentRow, usual: readonly [number, number]): readonly RowFact[] {
  const days = between(row.distractionStartDay, row.distractionEndDay);
  if (days === null || days <= 0 || row.gainMm === null || row.gainMm <= 0 || row.osteotomyLevels === 2) return [];
  return outside("out-of-usual-range", row.gainMm / days, usual, { field: "gainMm", what: "gain a day of distraction", unit: "mm/day" });
}
