import { closingDay, type Day, onWeekday } from "./calendar";
import type { Chance } from "./chance";

export type FollowUp = { readonly surgery: Day; readonly distractionEnd: Day; readonly solid: Day; readonly until: Day };

/**
 * Clinic days with a film: fortnightly in distraction, every four weeks until the last bone is solid (six to eight weeks
 * once that has taken 200 days), then at three, twelve and twenty-four months. Nothing after the closing day.
 */
export function clinicDays(chance: Chance, { surgery, distractionEnd, solid, until }: FollowUp): readonly Day[] {
  const last = Math.min(until, closingDay);
  const days: Day[] = [];
  let day = surgery;
  while (day <= last) {
    day = onWeekday(day + stepAfter(chance, day, { surgery, distractionEnd, solid }));
    if (day <= last) days.push(day);
    if (day > surgery + 780) break;
  }
  return days;
}

function stepAfter(chance: Chance, day: Day, { surgery, distractionEnd, solid }: Omit<FollowUp, "until">): number {
  if (day < distractionEnd) return chance.whole(12, 15);
  if (day < solid) return day - distractionEnd < 200 ? chance.whole(24, 32) : chance.whole(42, 56);
  if (day < solid + 60) return chance.whole(70, 100);
  return day < surgery + 300
    ? Math.max(90, surgery + 365 - day + chance.whole(-20, 25))
    : Math.max(120, surgery + 735 - day + chance.whole(-20, 40));
}
