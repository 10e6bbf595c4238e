import type { Day } from "./calendar";
import type { Chance } from "./chance";
import { assistedFrames, frames } from "./device";
import { implantOf } from "./implant";
import { osteotomyOf } from "./osteotomy";
import { softTissueOf } from "./soft-tissue";
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

const smallBones: ReadonlySet<Bone> = new Set(["forearm", "foot-ray", "hand-ray"]);

function prescriptionOf(chance: Chance, technique: Technique): SegmentDraft {
  const rate = rateOf(chance, technique);
  const steps = frames.has(technique.device) ? 4 : rate === 0.66 ? 2 : chance.pick([3, 3, 4]);
  return { prescribedRateMmPerDay: rate, prescribedStepsPerDay: steps };
}

/** mm a day: 1 in the femur, three quarters in the tibia of a grown person, half in small bones. */
function rateOf(chance: Chance, { bone, device, age }: Technique): number {
  if (smallBones.has(bone)) return 0.5;
  if (bone === "tibia") return chance.pick(age < 14 ? [0.75, 1] : [0.66, 0.75, 0.75, 0.75]);
  return chance.pick(assistedFrames.has(device) ? [0.75, 1] : [0.9, 1, 1, 1]);
}
