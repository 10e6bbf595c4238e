import type { Day } from "./calendar";
import type { Chance } from "./chance";
import type { Visited } from "./segment-visits";
import type { VisitDraft } from "./types";

const fives = (value: number) => Math.round(value / 5) * 5;

/** Motion of the joint beside the bone: lost while it is drawn apart, most of it regained in the year after. Invented. */
export function motionOf(chance: Chance, { fields, distraction, surgery }: Visited, day: Day): Partial<VisitDraft> {
  const stiff = fields.planChangeReason === "stiffness" ? 1.4 : 1;
  const lost = stiff * lostShare(day, surgery, distraction.endDay);
  if (!chance.happens(0.9)) return {};
  if (fields.bone === "femur") {
    return {
      kneeFlexionDeg: fives(140 - (35 + distraction.gainMm * 0.6) * lost + 4 * chance.normal()),
      kneeExtensionDeg: lost > 0.6 ? -fives(8 * lost * chance.uniform()) : 0,
      hipFlexionDeg: chance.happens(0.3) ? fives(120 - 20 * lost) : null,
    };
  }
  if (fields.bone !== "tibia") return {};
  return {
    ankleDorsiflexionDeg: fives(15 - (10 + distraction.gainMm * 0.25) * lost + 3 * chance.normal()),
    kneeExtensionDeg: lost > 0.6 ? -fives(6 * lost * chance.uniform()) : 0,
    kneeFlexionDeg: chance.happens(0.4) ? fives(138 - 15 * lost) : null,
  };
}

/** Nothing lost before surgery, most at the end of distraction, a tenth a year later. */
function lostShare(day: Day, surgery: Day, end: Day): number {
  if (day < surgery) return 0;
  if (day <= end) return Math.max(0.3, (day - surgery) / (end - surgery));
  return Math.max(0.1, 1 - (day - end) / 330);
}
