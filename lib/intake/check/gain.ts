import type { SegmentRow } from "@/lib/codebook";
import { between, outside, type SegmentCheck } from "./segment-fact";

/** Gain as a share of the bone's length before: usually at most 30 %, possible at most 150 %. */
export const checkGainOfBone: SegmentCheck = ({ gainMm, boneLengthBeforeMm }) => {
  if (gainMm === null || boneLengthBeforeMm === null) return [];
  const percent = (gainMm * 100) / boneLengthBeforeMm;
  if (percent > 150) return [{ code: "gain-over-bone", field: "gainMm", found: `${Math.round(percent)} % of the bone` }];
  return outside("out-of-usual-range", percent, [0, 30], { field: "gainMm", what: "gain", unit: "% of the bone" });
};

// below it an index means little, and tests no typing
const smallestGainMm = 10;

/** Days from surgery to consolidation a centimetre gained: usually 10-150, possible 3-1000. */
export const checkHealingIndex: SegmentCheck = ({ surgeryDay, consolidationDay, gainMm }) => {
  const days = between(surgeryDay, consolidationDay);
  if (days === null || days < 0 || gainMm === null || gainMm < smallestGainMm) return [];
  const place = { field: "consolidationDay", what: "surgery to consolidation", unit: "days/cm" };
  const index = (days * 10) / gainMm;
  const hard = outside("out-of-hard-range", index, [3, 1000], place);
  return hard.length > 0 ? hard : outside("out-of-usual-range", index, [10, 150], place);
};

/** Planned gain of one bone in stature lengthening: usually 30-80 mm (common practice, no source). */
export const checkPlanForStature: SegmentCheck = ({ plannedGainMm, bone }, { indication }) =>
  indication === "stature" && (bone === "femur" || bone === "tibia")
    ? outside("out-of-usual-range", plannedGainMm, [30, 80], {
        field: "plannedGainMm",
        what: "planned gain of one bone in stature lengthening",
        unit: "mm",
      })
    : [];

/** Gain ten times smaller than planned, or the other way round: one of the two was typed in centimetres. */
export const checkCentimetres: SegmentCheck = ({ gainMm, plannedGainMm }) => {
  if (gainMm === null || plannedGainMm === null || gainMm <= 0 || plannedGainMm <= 0) return [];
  if (gainMm < 10 && isNear(gainMm * 10, plannedGainMm))
    return [{ code: "cm-typed-as-mm", field: "gainMm", found: String(gainMm), about: { unit: "mm" } }];
  if (plannedGainMm < 10 && isNear(plannedGainMm * 10, gainMm)) {
    return [{ code: "cm-typed-as-mm", field: "plannedGainMm", found: String(plannedGainMm), about: { unit: "mm" } }];
  }
  return [];
};

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) <= 0.25 * b;
}

/** A gain that is rate × days to the hundredth, and no length that is read off a film (whole or half millimetres). */
export const checkDialForFilm: SegmentCheck = (row) => {
  const counted = dialCountMm(row);
  if (counted === null || row.gainMm === null || row.gainMm <= 0) return [];
  const readOff = Number.isInteger(row.gainMm * 2);
  return !readOff && Math.abs(counted - row.gainMm) < 0.005
    ? [{ code: "dial-for-film", field: "gainMm", found: `${row.gainMm}, rate × days` }]
    : [];
};

function dialCountMm({ prescribedRateMmPerDay, distractionStartDay, distractionEndDay }: SegmentRow): number | null {
  const days = between(distractionStartDay, distractionEndDay);
  return days === null || prescribedRateMmPerDay === null ? null : prescribedRateMmPerDay * days;
}
