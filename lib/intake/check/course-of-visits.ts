import type { SegmentRow, VisitRow } from "@/lib/codebook";
import { between, type RowFact } from "./segment-fact";

const fewestVisits = 3;
const relative = 0.1;
const leastMm = 5;

/** Gain against the slope of the visits' films × days of distraction: within 10 % or 5 mm, whichever is more. */
export function checkCourse(row: SegmentRow, visits: readonly VisitRow[]): readonly RowFact[] {
  const days = between(row.distractionStartDay, row.distractionEndDay);
  if (row.gainMm === null || row.gainMm <= 0 || days === null || days <= 0) return [];
  const during = visits.filter(
    ({ distractedMm, distractedBy, visitDay }) =>
      distractedMm !== null &&
      distractedBy !== "dial" &&
      visitDay >= (row.distractionStartDay as number) &&
      visitDay <= (row.distractionEndDay as number),
  );
  const slope = slopeOf(during.map(({ visitDay, distractedMm }) => [visitDay, distractedMm as number]));
  if (slope === null) return [];
  const expected = slope * days;
  if (Math.abs(expected - row.gainMm) <= Math.max(leastMm, relative * row.gainMm)) return [];
  return [
    {
      code: "gain-against-course",
      field: "gainMm",
      found: `${row.gainMm} mm against ${Math.round(expected)} mm by the visits`,
      about: { what: "a gain within 10 % or 5 mm of what the visits show" },
    },
  ];
}

/** Least-squares slope; `null` of fewer than three points or of one day only. */
function slopeOf(points: readonly (readonly [x: number, y: number])[]): number | null {
  if (points.length < fewestVisits) return null;
  const meanX = points.reduce((sum, [x]) => sum + x, 0) / points.length;
  const meanY = points.reduce((sum, [, y]) => sum + y, 0) / points.length;
  const spread = points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  if (spread === 0) return null;
  return points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0) / spread;
}
