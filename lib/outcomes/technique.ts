import type { SegmentCase } from "./case";

/** Reamed diameter less the nail's, mm (common practice: at least 2 over, no source); `null` of a nail outside the canal, or where one isn't recorded. */
export function reamedMinusNailMm({ nailUse, nailDiameterMm, reamedDiameterMm }: SegmentCase): number | null {
  if (nailUse === "outside-canal" || nailDiameterMm === null || reamedDiameterMm === null) return null;
  // diameters come in halves of a millimetre; a difference of theirs is none of binary arithmetic
  return Math.round((reamedDiameterMm - nailDiameterMm) * 100) / 100;
}
