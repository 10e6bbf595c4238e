import { type Day, partsOf } from "./calendar";
import type { Chance } from "./chance";
import { assistedFrames, frames, lengtheningNails } from "./device";
import type { Bone, Device, Entry, Group, SegmentDraft } from "./types";

export type Technique = {
  readonly bone: Bone;
  readonly device: Device;
  readonly entry: Entry | null;
  readonly group: Group;
  readonly age: number;
  readonly day: Day;
  readonly plannedGainMm: number;
};

/** What was done on the day of surgery. Shares invented; at least 2 mm reamed over the nail is common practice. */
export function techniqueOf(chance: Chance, technique: Technique): SegmentDraft {
  return {
    ...implantOf(chance, technique),
    ...osteotomyOf(chance, technique),
    ...softTissueOf(chance, technique),
    ...prescriptionOf(chance, technique),
  };
}

function implantOf(chance: Chance, { bone, device, entry, age, day, plannedGainMm }: Technique): SegmentDraft {
  const nail = lengtheningNails.has(device);
  const inCanal = nail || device === "lengthening-over-nail";
  if (!inCanal) return { device, entry };
  const thick = bone === "tibia" ? [9, 10, 10, 11] : [10, 10.5, 11, 11.5, 12.5];
  const nailDiameterMm = age < 16 || bone === "humerus" ? chance.pick([8.5, 9, 9.5]) : chance.pick(thick);
  const reamedDiameterMm = chance.happens(0.8) ? nailDiameterMm + chance.pick([2, 2, 2, 2.5, 3]) : null;
  if (!nail) return { device, entry, nailDiameterMm, reamedDiameterMm, canalVented: chance.happens(0.6) };
  const stroke = plannedGainMm > 48 ? 80 : chance.pick([50, 80]);
  const steel =
    device === "magnetic-nail" && bone === "femur" && partsOf(day).year >= 2020 && partsOf(day).year <= 2021 && chance.happens(0.4);
  return {
    device,
    entry,
    nailDiameterMm,
    reamedDiameterMm,
    nailStrokeMm: chance.happens(0.93) ? stroke : null,
    nailMaterial: steel ? "stainless-steel" : chance.happens(0.9) ? "titanium-alloy" : null,
    nailUse: "in-canal",
    canalDiameterMm: chance.happens(0.4) ? nailDiameterMm + chance.pick([0, 0.5, 1, 1.5]) : null,
    canalVented: bone === "femur" ? chance.happens(0.7) : null,
    distractionTestedOnTable: chance.happens(0.8) ? true : null,
  };
}

function osteotomyOf(chance: Chance, { bone, device, entry, group }: Technique): SegmentDraft {
  const nail = lengtheningNails.has(device);
  const proximal = bone === "tibia" || (bone === "femur" && entry !== "retrograde" && nail);
  return {
    osteotomyTechnique: chance.weighted([
      ["drill-and-osteotome", 72],
      ["gigli-saw", bone === "tibia" && !nail ? 30 : 2],
      ["intramedullary-saw", nail ? 6 : 0],
      ["corticotomy", nail ? 1 : 10],
    ] as const),
    osteotomySite: proximal
      ? chance.weighted([
          ["proximal", 8],
          ["middle", 2],
        ] as const)
      : chance.weighted([
          ["distal", 7],
          ["middle", 3],
        ] as const),
    osteotomyLevels: group === "dysplasia" && bone === "tibia" && device === "circular-fixator" && chance.happens(0.5) ? 2 : 1,
    osteotomyOrientation: chance.happens(0.85)
      ? chance.weighted([
          ["transverse", 8],
          ["oblique", 2],
        ] as const)
      : null,
    osteotomyCooled: chance.happens(0.6) ? chance.happens(0.8) : null,
    osteotomyFromProximalMm: nail && chance.happens(0.4) ? chance.whole(bone === "tibia" ? 70 : 90, 130) : null,
  };
}

function softTissueOf(chance: Chance, { bone, group, plannedGainMm }: Technique): SegmentDraft {
  const large = plannedGainMm >= 50;
  const femur = bone === "femur";
  return {
    releaseIliotibialBand: femur ? chance.happens(large ? 0.75 : 0.3) : null,
    releaseRectus: femur ? chance.happens(0.06) : null,
    releaseAdductors: femur ? chance.happens(group === "dysplasia" ? 0.2 : 0.04) : null,
    releaseHamstrings: femur ? chance.happens(0.08) : null,
    releaseGastrocnemius: bone === "tibia" ? chance.happens(large ? 0.7 : 0.35) : null,
    releasePeronealNerve: bone === "tibia" ? chance.happens(large ? 0.3 : 0.08) : null,
    releaseFascia: bone === "tibia" ? chance.happens(0.35) : null,
    fibula:
      bone === "tibia"
        ? chance.weighted([
            ["cut-and-fixed-both-ends", 80],
            ["cut-and-fixed-one-end", 14],
            ["cut", 6],
          ] as const)
        : "not-applicable",
    blockingScrews:
      femur || bone === "tibia"
        ? chance.weighted([
            [0, 60],
            [1, 20],
            [2, 16],
            [3, 4],
          ] as const)
        : null,
    boneGraftAtOperation: chance.happens(0.9) ? chance.happens(0.03) : null,
  };
}

function prescriptionOf(chance: Chance, { bone, device, age }: Technique): SegmentDraft {
  const small = bone === "forearm" || bone === "foot-ray" || bone === "hand-ray";
  const tibialRate = age < 14 ? [0.75, 1] : [0.66, 0.75, 0.75, 0.75];
  const rate = small
    ? 0.5
    : bone === "tibia"
      ? chance.pick(tibialRate)
      : chance.pick(assistedFrames.has(device) ? [0.75, 1] : [0.9, 1, 1, 1]);
  const steps = frames.has(device) ? 4 : rate === 0.66 ? 2 : chance.pick([3, 3, 4]);
  return { prescribedRateMmPerDay: rate, prescribedStepsPerDay: steps };
}
