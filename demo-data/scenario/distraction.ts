import type { Day } from "./calendar";
import type { Chance } from "./chance";
import type { Fate, SegmentDraft } from "./types";

export type Distraction = {
  readonly startDay: Day;
  readonly endDay: Day;
  readonly gainMm: number;
  readonly daysPaused: number | null;
  readonly reason: SegmentDraft["planChangeReason"];
  readonly plannedGainFinalMm: number | null;
};

/** Whether a programme is stopped before its aim, and by what share of it: shared by the two sides of one operation. */
export type Stop = { readonly share: number; readonly reason: NonNullable<SegmentDraft["planChangeReason"]> } | null;

export function stopOf(chance: Chance, bone: string, bilateral: boolean): Stop {
  if (!chance.happens(bone === "tibia" ? 0.16 : 0.12)) return null;
  const reason = chance.among({
    stiffness: 28,
    nerve: bone === "tibia" ? 16 : 5,
    pain: 14,
    "poor-regenerate": 16,
    "patient-wish": bilateral ? 22 : 10,
    "goal-reached-early": 8,
  });
  return { share: reason === "goal-reached-early" ? chance.between(0.86, 0.93) : chance.between(0.6, 0.9), reason };
}

export type Prescribed = {
  readonly surgery: Day;
  readonly plannedGainMm: number;
  readonly rateMmPerDay: number;
  readonly tibial: boolean;
  readonly age: number;
  readonly fate: Fate;
  readonly stop: Stop;
};

/** The course of distraction: latency, rate as carried out (a little under the prescribed), pauses, and the gain on film. */
export function distractionOf(chance: Chance, { surgery, plannedGainMm, rateMmPerDay, tibial, age, fate, stop }: Prescribed): Distraction {
  const latency = age < 13 ? chance.whole(4, 6) : tibial ? chance.whole(6, 10) : chance.whole(5, 8);
  const startDay = surgery + latency;
  const small = fate === "gain-small";
  const shortfall = small ? 0 : Math.min(2, Math.max(-1.5, 0.4 + 0.9 * chance.normal()));
  const aim = stop && !small ? plannedGainMm * stop.share : plannedGainMm;
  const gainMm = small ? chance.whole(8, 9) : Math.max(10, Math.round(aim - shortfall));
  const daysPaused = chance.happens(0.12) ? chance.whole(2, 3) : null;
  const days = Math.max(8, Math.round(gainMm / (rateMmPerDay * chance.between(0.975, 1))) + (daysPaused ?? 0));
  const stopped = stop !== null && gainMm < plannedGainMm - 2;
  const reason = small ? "device" : stopped ? stop.reason : null;
  return { startDay, endDay: startDay + days, gainMm, daysPaused, reason, plannedGainFinalMm: reason ? Math.max(gainMm, 10) : null };
}
