import type { BodyMeasureRow } from "@/lib/codebook";
import { outside, type RowFact, type SegmentCheck } from "./segment-fact";

/** Causes that leave a bone or a body shorter than adults' are: their lengths test no typing. */
const shortening: ReadonlySet<string | null> = new Set([
  "achondroplasia",
  "hypochondroplasia",
  "other-dysplasia",
  "turner",
  "congenital-femoral-deficiency",
  "fibular-hemimelia",
  "tibial-hemimelia",
  "growth-arrest",
  "post-infective",
  "blount",
  "enchondromatosis",
  "neurological",
]);
const adultYears = 18;
const adultLengths: Readonly<Record<string, readonly [number, number]>> = { femur: [393, 584], tibia: [308, 465] };
const adultStature = [1200, 2100] as const;

function isOrdinaryAdult(ageYears: number | null, aetiology: string | null): boolean {
  return ageYears !== null && ageYears >= adultYears && !shortening.has(aetiology);
}

/** Length before of an adult's femur or tibia, where nothing explains a short one. */
export const checkBoneLength: SegmentCheck = (row, { aetiology }) => {
  const usual = adultLengths[row.bone];
  if (!usual || !isOrdinaryAdult(row.ageAtSurgeryYears, aetiology)) return [];
  return outside("out-of-usual-range", row.boneLengthBeforeMm, usual, {
    field: "boneLengthBeforeMm",
    what: `length of an adult’s ${row.bone}`,
    unit: "mm",
  });
};

/** Stature and bone lengths of an adult, where nothing explains a small one. `ageYears`: the age known from the same row. */
export function checkBody(row: BodyMeasureRow, ageYears: number | null, aetiology: string | null): readonly RowFact[] {
  if (!isOrdinaryAdult(ageYears, aetiology)) return [];
  const stature = outside("out-of-usual-range", row.statureMm, adultStature, {
    field: "statureMm",
    what: "an adult’s stature",
    unit: "mm",
  });
  const bones = (["femurLeftMm", "femurRightMm", "tibiaLeftMm", "tibiaRightMm"] as const).flatMap((field) => {
    const bone = field.startsWith("femur") ? "femur" : "tibia";
    return outside("out-of-usual-range", row[field], adultLengths[bone] as readonly [number, number], {
      field,
      what: `length of an adult’s ${bone}`,
      unit: "mm",
    });
  });
  return [...stature, ...bones];
}
