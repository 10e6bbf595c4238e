import { closingDay, type Day } from "./calendar";
import { chanceOf } from "./chance";
import { seed } from "./parameters";
import type { Case, Score, Segment } from "./types";

/** The unit's own scores, made up for the demo: no instrument of that name exists, and no question of any is shipped. */
export const scores = [
  { code: "demo-function", range: [0, 100], direction: "higher", minimalDifference: 8 },
  { code: "demo-difficulty-of-day", range: [0, 40], direction: "lower", minimalDifference: 4 },
] as const;

/** Months after the last operation at which a score is asked for, the worst of the way, and how many answer. Invented. */
const windows = [
  { months: 0, lost: 0, answered: 0.85 },
  { months: 6, lost: 1, answered: 0.7 },
  { months: 12, lost: 0.35, answered: 0.66 },
  { months: 24, lost: 0.05, answered: 0.5 },
] as const;

export function scoresOf({ index, group }: Case, segments: readonly Segment[]): readonly Score[] {
  const surgery = Math.max(...segments.map(({ fields }) => fields.surgeryDay ?? 0));
  const first = Math.min(...segments.map(({ fields }) => fields.surgeryDay ?? 0));
  const lastSeen = Math.max(...segments.map(({ fields }) => fields.lastFollowUpDay ?? 0));
  const own = chanceOf(seed, "score level", index).normal();
  return windows.flatMap((window) => {
    const chance = chanceOf(seed, "score", index, window.months);
    const scoreDay: Day =
      window.months === 0 ? first - chance.whole(1, 20) : surgery + Math.round(window.months * 30.4375) + chance.whole(-12, 20);
    if (!chance.happens(window.answered) || scoreDay > Math.min(closingDay, lastSeen + 40)) return [];
    const before = (group === "stature" ? 88 : 68) + 7 * own;
    const level = Math.max(
      20,
      Math.min(100, before - 28 * window.lost + (window.months >= 12 && group !== "stature" ? 9 : 0) + 4 * chance.normal()),
    );
    return [
      { scoreCode: scores[0].code, scoreDay, scoreValue: Math.round(level) },
      { scoreCode: scores[1].code, scoreDay, scoreValue: Math.round((100 - level) * 0.36) },
    ];
  });
}
