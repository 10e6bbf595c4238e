import { type Day, partsOf } from "./calendar";
import type { Chance } from "./chance";
import type { HealingGroup } from "./parameters";
import type { Bone, Device, Entry, Group } from "./types";

type Operated = { readonly bone: Bone; readonly group: Group; readonly age: number; readonly day: Day };

/** The device of an operation: magnetic nails above all, frames where the canal is narrow or the plates of growth are open. Invented shares. */
export function deviceOf(chance: Chance, { bone, group, age, day }: Operated): Device {
  const early = partsOf(day).year <= 2019;
  const child = age < 13;
  if (group === "loss") return chance.among({ "circular-fixator": 5, "hexapod-circular-fixator": 3, "monolateral-fixator": 2 });
  if (bone === "forearm" || bone === "foot-ray" || bone === "hand-ray") return "monolateral-fixator";
  if (bone === "humerus") return chance.among({ "monolateral-fixator": 5, "magnetic-nail": 1 });
  if (bone === "femur") return femoral(chance, { early, child, dysplasia: group === "dysplasia", stature: group === "stature" });
  return tibial(chance, { early, child, dysplasia: group === "dysplasia", stature: group === "stature" });
}

type Circumstances = { readonly early: boolean; readonly child: boolean; readonly dysplasia: boolean; readonly stature: boolean };

function femoral(chance: Chance, { early, child, dysplasia, stature }: Circumstances): Device {
  if (dysplasia) return chance.among({ "monolateral-fixator": 6, "magnetic-nail": 4 });
  if (child) return chance.among({ "monolateral-fixator": 6, "magnetic-nail": 5, "hexapod-circular-fixator": 1, "lengthening-plate": 1 });
  const older: readonly (readonly [Device, number])[] = [
    ["mechanical-nail", early ? 14 : 0],
    ["motorised-nail-receiver-under-skin", early ? 26 : 0],
  ];
  if (stature) return chance.weighted([["magnetic-nail", 86], ["lengthening-over-nail", 7], ...older]);
  return chance.weighted([
    ["magnetic-nail", 78],
    ["monolateral-fixator", 9],
    ["lengthening-over-nail", 6],
    ["lengthening-plate", 2],
    ["other", 1],
    ...older,
  ]);
}

function tibial(chance: Chance, { early, child, dysplasia, stature }: Circumstances): Device {
  if (dysplasia) return chance.among({ "circular-fixator": 6, "hexapod-circular-fixator": 4 });
  if (child) return chance.among({ "circular-fixator": 4, "hexapod-circular-fixator": 6, "monolateral-fixator": 1 });
  if (stature)
    return chance.among({
      "magnetic-nail": 72,
      "lengthening-over-nail": 10,
      "lengthening-then-nailing": 9,
      "circular-fixator": early ? 10 : 3,
    });
  return chance.among({
    "magnetic-nail": 48,
    "hexapod-circular-fixator": 20,
    "circular-fixator": early ? 20 : 9,
    "lengthening-then-nailing": 8,
    "lengthening-then-plating": 3,
    "monolateral-fixator": 3,
  });
}

/** Nails that lengthen by themselves. */
export const lengtheningNails: ReadonlySet<Device> = new Set(["magnetic-nail", "motorised-nail-receiver-under-skin", "mechanical-nail"]);
/** Frames that stay on until the bone is solid. */
export const frames: ReadonlySet<Device> = new Set(["monolateral-fixator", "circular-fixator", "hexapod-circular-fixator"]);
/** Frames that come off when a nail or plate takes over. */
export const assistedFrames: ReadonlySet<Device> = new Set([
  "lengthening-over-nail",
  "lengthening-then-nailing",
  "lengthening-then-plating",
]);

export function entryOf(chance: Chance, bone: Bone, device: Device, group: Group, age: number): Entry | null {
  const inside = lengtheningNails.has(device) || device === "lengthening-over-nail" || device === "lengthening-then-nailing";
  if (!inside) return "not-applicable";
  if (bone === "humerus") return null;
  if (bone === "tibia") return chance.among({ "tibial-below-patella": 4, "tibial-above-patella": 3 });
  if (group === "deformity") return chance.among({ retrograde: 7, trochanteric: 3 });
  if (age < 18) return chance.among({ trochanteric: 7, retrograde: 3 });
  return chance.among({ piriformis: 4, trochanteric: 8, retrograde: group === "stature" ? 2 : 5 });
}

export function healingGroupOf(bone: Bone, device: Device, entry: Entry | null): HealingGroup {
  if (bone === "humerus") return "humerus";
  if (bone === "femur") return femoralGroup(device, entry);
  return bone === "tibia" ? tibialGroup(device) : "small-bone";
}

function femoralGroup(device: Device, entry: Entry | null): HealingGroup {
  if (frames.has(device)) return "femur-frame";
  if (device === "lengthening-over-nail") return "femur-over-nail";
  if (device === "mechanical-nail" || device === "motorised-nail-receiver-under-skin") return "femur-mechanical-nail";
  return entry === "retrograde" ? "femur-nail-retrograde" : "femur-nail-antegrade";
}

function tibialGroup(device: Device): HealingGroup {
  if (frames.has(device)) return "tibia-frame";
  if (device === "lengthening-over-nail") return "tibia-over-nail";
  return assistedFrames.has(device) ? "tibia-then-nail" : "tibia-nail";
}
