import type { Chance } from "./chance";
import { lengtheningNails } from "./device";
import type { Group, SegmentDraft } from "./types";

const degrees = (value: number) => Math.round(value * 2) / 2;

/**
 * Axis and angles on standing films, recorded for about half of the femora and tibiae. A nail along the anatomical axis
 * of the femur moves the mechanical axis outwards as the bone grows longer; by how much is invented.
 */
export function alignmentOf(chance: Chance, group: Group, fields: SegmentDraft): SegmentDraft {
  const { bone, device, gainMm, consolidationDay } = fields;
  if ((bone !== "femur" && bone !== "tibia") || !device || !chance.happens(group === "deformity" ? 0.85 : 0.5)) return {};
  const deformed = group === "deformity";
  const before = (deformed ? 16 : 3) + (deformed ? 11 : 6) * chance.normal();
  const finished = gainMm && consolidationDay && chance.happens(0.85);
  const drift = bone === "femur" && lengtheningNails.has(device) ? -0.1 * (gainMm ?? 0) : 0;
  const corrected = deformed ? 0.3 * before : before + drift;
  return {
    axisDeviationBeforeMm: Math.round(before),
    axisDeviationFinalMm: finished ? Math.round(corrected + 4 * chance.normal()) : null,
    ...angles(chance, { femoral: bone === "femur", deformed, finished: Boolean(finished) }),
    rotationDifferenceFinalDeg: finished && chance.happens(0.4) ? degrees(3.5 * Math.abs(chance.normal())) : null,
  };
}

type Filmed = { readonly femoral: boolean; readonly deformed: boolean; readonly finished: boolean };

/** Joint angles about 87°, as is usual in standing films; deformed ones stray before and come back. */
function angles(chance: Chance, { femoral, deformed, finished }: Filmed): SegmentDraft {
  const before = degrees(87 + (deformed ? 6 : 2) * chance.normal());
  const final = finished ? degrees(87.5 + 2 * chance.normal()) : null;
  return femoral ? { mldfaBeforeDeg: before, mldfaFinalDeg: final } : { mptaBeforeDeg: before, mptaFinalDeg: final };
}
