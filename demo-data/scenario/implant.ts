import { partsOf } from "./calendar";
import type { Chance } from "./chance";
import { lengtheningNails } from "./device";
import type { Technique } from "./technique";
import type { SegmentDraft } from "./types";

/** The nail, where there is one in the canal, and the canal made ready for it. */
export function implantOf(chance: Chance, technique: Technique): SegmentDraft {
  const { bone, device, entry } = technique;
  const nail = lengtheningNails.has(device);
  if (!nail && device !== "lengthening-over-nail") return { device, entry };
  const nailDiameterMm = chance.pick(diametersMm(technique));
  const reamedDiameterMm = chance.happens(0.8) ? nailDiameterMm + chance.pick([2, 2, 2, 2.5, 3]) : null;
  const inCanal = { device, entry, nailDiameterMm, reamedDiameterMm };
  if (!nail) return { ...inCanal, canalVented: chance.happens(0.6) };
  return {
    ...inCanal,
    nailStrokeMm: strokeMm(chance, technique),
    nailMaterial: materialOf(chance, technique),
    nailUse: "in-canal",
    canalDiameterMm: chance.happens(0.4) ? nailDiameterMm + chance.pick([0, 0.5, 1, 1.5]) : null,
    canalVented: bone === "femur" ? chance.happens(0.7) : null,
    distractionTestedOnTable: chance.happens(0.8) ? true : null,
  };
}

function diametersMm({ bone, age }: Technique): readonly number[] {
  if (age < 16 || bone === "humerus") return [8.5, 9, 9.5];
  return bone === "tibia" ? [9, 10, 10, 11] : [10, 10.5, 11, 11.5, 12.5];
}

function strokeMm(chance: Chance, { plannedGainMm }: Technique): number | null {
  const stroke = plannedGainMm > 48 ? 80 : chance.pick([50, 80]);
  return chance.happens(0.93) ? stroke : null;
}

/** The unit tried steel nails in the femur for two years. */
function materialOf(chance: Chance, { device, bone, day }: Technique): SegmentDraft["nailMaterial"] {
  const { year } = partsOf(day);
  const tried = device === "magnetic-nail" && bone === "femur" && (year === 2020 || year === 2021);
  if (tried && chance.happens(0.4)) return "stainless-steel";
  return chance.happens(0.9) ? "titanium-alloy" : null;
}
