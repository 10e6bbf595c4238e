import { calendarDateOf } from "../strip";
import { type Draft, findPart } from "./draft";
import type { Keyed } from "./keyed-drafts";
import type { SegmentIndex } from "./segment-index";
import type { Surgery } from "./time-of-surgery";

const yearStep = 10_000;

/**
 * The surgery of a row in a sheet that has no column for it (events in numbered columns, say): that of the only such segment known from
 * these files or held, by its episode where one is said. `null` when none or several are known.
 */
export function knownSurgery(draft: Draft, keyed: Keyed, index: SegmentIndex): Surgery | null {
  const { bone, side, episode } = findPart(draft, "segment")?.values ?? {};
  if (typeof bone !== "string" || typeof side !== "string") return null;
  const known = index.segmentsOf(keyed.person, bone, side).filter((segment) => episode === undefined || (segment.episode ?? 1) === episode);
  const [only, another] = known;
  if (!only || another) return null;
  const day = only.surgeryDay;
  if (index.lineOf(keyed.person) === "undated") return { line: "undated", day, year: Math.floor(day / yearStep) };
  return { line: "dated", day, date: calendarDateOf(day + keyed.shiftDays) };
}
