import { type Day, onWeekday } from "./calendar";
import type { Chance } from "./chance";
import { assistedFrames, frames } from "./device";
import type { Distraction } from "./distraction";
import { motionOf } from "./motion";
import type { Device, SegmentDraft, VisitDraft } from "./types";

export type Visited = {
  readonly clinic: readonly Day[];
  readonly surgery: Day;
  readonly device: Device;
  readonly fields: SegmentDraft;
  readonly distraction: Distraction;
};

/** What each clinic day recorded of one bone: length on film, cortices, motion, weight bearing, pain. */
export function visitsOf(chance: Chance, visited: Visited): readonly VisitDraft[] {
  const before = beforeSurgery(chance, visited);
  const after = visited.clinic.map((visitDay) => ({
    visitDay,
    ...lengthOn(chance, visited, visitDay),
    cortices: corticesOn(chance, visited, visitDay),
    ...bearingOn(visited, visitDay),
    ...motionOf(chance, visited, visitDay),
    ...painOn(chance, visited, visitDay),
    ...skinOn(chance, visited, visitDay),
    readBy: chance.happens(0.7) ? ("operator" as const) : null,
  }));
  return [...before, ...after];
}

/** Nine in ten are seen with their motion measured in the weeks before surgery, which is what a loss is counted from. */
function beforeSurgery(chance: Chance, visited: Visited): readonly VisitDraft[] {
  const visitDay = onWeekday(visited.surgery - chance.whole(8, 40));
  if (!chance.happens(0.9)) return [];
  return [
    {
      visitDay,
      ...motionOf(chance, visited, visitDay),
      weightBearing: "full",
      painAtRest: chance.whole(0, 1),
      analgesia: "none",
      nerve: "none",
    },
  ];
}

/** Length so far, while the bone is drawn apart and once after: on film, or read off the device where no film was measured. */
function lengthOn(chance: Chance, { distraction, clinic, fields }: Visited, day: Day): Pick<VisitDraft, "distractedMm" | "distractedBy"> {
  const { startDay, endDay, gainMm } = distraction;
  const first = clinic.find((visit) => visit >= endDay);
  if (fields.gainMm === 0 || day <= startDay || (first !== undefined && day > first)) return {};
  const share = Math.min(1, (day - startDay) / (endDay - startDay));
  const noise = share < 1 ? Math.max(-1, Math.min(1, 0.5 * chance.normal())) : 0;
  const distractedMm = Math.max(0, Math.round(2 * (gainMm * share + noise)) / 2);
  return { distractedMm, distractedBy: chance.happens(0.93) || share === 1 ? "film" : "dial" };
}

/** Cortices bridged: none while drawn apart, three or four from the day of consolidation on, and none read once the sheet lost the film. */
function corticesOn(chance: Chance, { fields, distraction }: Visited, day: Day): number | null {
  const { consolidationDay, lastFilmDay, surgeryDay } = fields;
  if (day > (lastFilmDay ?? 0)) return null;
  if (consolidationDay && day >= consolidationDay) return day < consolidationDay + 60 ? 3 : 4;
  if (fields.gainMm === 0) return day < (surgeryDay ?? 0) + 30 ? 0 : 1;
  if (day <= distraction.endDay) return 0;
  const share = consolidationDay ? (day - distraction.endDay) / (consolidationDay - distraction.endDay) : 0.5;
  return Math.min(2, Math.floor(share * 2 + chance.between(0, 0.8)));
}

function bearingOn({ fields, distraction, device }: Visited, day: Day): Pick<VisitDraft, "weightBearing"> {
  const { fullWeightBearingDay, bone } = fields;
  if (bone !== "femur" && bone !== "tibia") return {};
  if (fullWeightBearingDay && day >= fullWeightBearingDay) return { weightBearing: "full" };
  // frames bear load from the first weeks on; a full weight recorded before the day of it would contradict that day
  if (frames.has(device) || assistedFrames.has(device)) return { weightBearing: "partial" };
  return { weightBearing: day < distraction.endDay + 30 ? "toe-touch" : "partial" };
}

function painOn(
  chance: Chance,
  { distraction, fields }: Visited,
  day: Day,
): Pick<VisitDraft, "painAtRest" | "painOnActivity" | "analgesia" | "nerve"> {
  if (!chance.happens(0.6)) return {};
  const busy = day <= distraction.endDay + 20;
  const painAtRest = Math.max(0, Math.min(10, Math.round((busy ? 3 : 1) + 1.2 * chance.normal())));
  const deficit = fields.planChangeReason === "nerve" && busy;
  return {
    painAtRest,
    painOnActivity: Math.min(10, painAtRest + chance.whole(0, 2)),
    analgesia: busy ? chance.among({ simple: 5, "weak-opioid": 3, "strong-opioid": 1, none: 1 }) : chance.among({ none: 8, simple: 3 }),
    nerve: deficit ? "sensory" : "none",
  };
}

function skinOn(
  chance: Chance,
  { device, fields, distraction }: Visited,
  day: Day,
): Pick<VisitDraft, "pinSiteGrade" | "callusShape" | "callusType"> {
  const framed = frames.has(device) && day <= (fields.fixatorRemovalDay ?? day);
  const read =
    day > distraction.endDay && day <= (fields.consolidationDay ?? day) && day <= (fields.lastFilmDay ?? 0) && chance.happens(0.5);
  return {
    pinSiteGrade: framed ? Number(chance.among({ "0": 6, "1": 3, "2": 1 })) : null,
    callusShape: read ? chance.among({ fusiform: 4, cylindrical: 5, concave: 2, lateral: 1 }) : null,
    callusType: read ? chance.whole(3, 8) : null,
  };
}
