import type { Day } from "./calendar";
import type { Chance } from "./chance";
import { healingGroupOf } from "./device";
import { type Distraction, distractionOf, type Stop } from "./distraction";
import { trueDaysToConsolidation } from "./healing";
import type { Technique } from "./technique";
import type { EventDraft, Fate, PersonDraft, SegmentDraft } from "./types";

export type Course = {
  readonly distraction: Distraction;
  readonly solid: Day;
  readonly rescue: Day | null;
  readonly events: readonly EventDraft[];
};
export type Circumstances = {
  readonly technique: Technique;
  readonly fields: SegmentDraft;
  readonly fate: Fate;
  readonly stop: Stop;
  readonly person: PersonDraft;
  readonly personEffect: number;
};

/** The course of one bone as it truly runs: distraction, rescue where healing fails, and the day on which the bone is solid. */
export function courseOf(chance: Chance, { technique, fields, fate, stop, person, personEffect }: Circumstances): Course {
  const { bone, device, entry, age, day, plannedGainMm } = technique;
  const rateMmPerDay = fields.prescribedRateMmPerDay ?? 1;
  const distraction = distractionOf(chance, { surgery: day, plannedGainMm, rateMmPerDay, tibial: bone === "tibia", age, fate, stop });
  const { gainMm, endDay } = distraction;
  const oblique = fields.osteotomyOrientation === "oblique";
  const days = trueDaysToConsolidation(chance, { group: healingGroupOf(bone, device, entry), gainMm, age, oblique, person, personEffect });
  const levels = fields.osteotomyLevels === 2 ? 0.62 : 1;
  const natural = Math.max(day + Math.round(days * levels), endDay + chance.whole(18, 30));
  // the slowest index seen stays below 150 days/cm, even when rounded up to the next visit
  const bounded = Math.min(natural, Math.max(endDay + 18, day + gainMm * 13 - 55));
  const slow = bounded - endDay > 270 && chance.happens(0.7);
  const latest = day + gainMm * 14 - 55;
  const tooShort = latest - 75 < endDay + 60;
  if (tooShort || (fate !== "rescue" && fate !== "rescue-open" && !slow)) return { distraction, solid: bounded, rescue: null, events: [] };
  return { distraction, ...rescued(chance, endDay, latest) };
}

function rescued(chance: Chance, endDay: Day, latest: Day): Pick<Course, "solid" | "rescue" | "events"> {
  const rescue = Math.min(endDay + chance.whole(120, 190), latest - 75);
  const eventType = chance.pick(["delayed-union", "insufficient-regenerate"] as const);
  const handling = chance.pick(["operation-under-anaesthesia", "operation-under-anaesthesia", "implant-exchanged"] as const);
  const event: EventDraft = {
    eventType,
    onsetDay: rescue,
    handling,
    planned: false,
    planChanged: true,
    goalMissed: false,
    purpose: "regenerate-healing",
    sequela: "none",
  };
  return { rescue, solid: Math.min(rescue + chance.whole(75, 150), latest), events: [event] };
}
