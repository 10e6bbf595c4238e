import type { Chance } from "./chance";
import type { Technique } from "./technique";
import type { SegmentDraft } from "./types";

/** Releases, the fibula, and what else was done at the operation. */
export function softTissueOf(chance: Chance, technique: Technique): SegmentDraft {
  const longBone = technique.bone === "femur" || technique.bone === "tibia";
  return {
    ...(technique.bone === "femur" ? femoral(chance, technique) : {}),
    ...(technique.bone === "tibia" ? tibial(chance, technique) : { fibula: "not-applicable" as const }),
    blockingScrews: longBone ? Number(chance.among({ "0": 60, "1": 20, "2": 16, "3": 4 })) : null,
    boneGraftAtOperation: chance.happens(0.9) ? chance.happens(0.03) : null,
  };
}

const isLarge = ({ plannedGainMm }: Technique) => plannedGainMm >= 50;

function femoral(chance: Chance, technique: Technique): SegmentDraft {
  return {
    releaseIliotibialBand: chance.happens(isLarge(technique) ? 0.75 : 0.3),
    releaseRectus: chance.happens(0.06),
    releaseAdductors: chance.happens(technique.group === "dysplasia" ? 0.2 : 0.04),
    releaseHamstrings: chance.happens(0.08),
  };
}

function tibial(chance: Chance, technique: Technique): SegmentDraft {
  return {
    releaseGastrocnemius: chance.happens(isLarge(technique) ? 0.7 : 0.35),
    releasePeronealNerve: chance.happens(isLarge(technique) ? 0.3 : 0.08),
    releaseFascia: chance.happens(0.35),
    fibula: chance.among({ "cut-and-fixed-both-ends": 80, "cut-and-fixed-one-end": 14, cut: 6 }),
  };
}
