import { fixatorDevices } from "@/lib/codebook";
import type { SegmentCase } from "../case";
import { courseOf } from "../healing/course";
import type { TreatmentEnd } from "./facts";

/** Which event ends the treatment of a nail; a frame's treatment ends when it comes off. */
export type EndRule = "healed-and-bearing" | "implant-removal" | "twelve-months";

const fixators: ReadonlySet<string | null> = new Set(fixatorDevices);
const twelveMonthsDays = 365;

/**
 * The day on which treatment of a segment ended. Frames: their removal (from memory). Nails have no agreed event: by default the later of
 * consolidation and full weight bearing; the removal of the implant or twelve months from surgery may be asked for beside it.
 */
export function treatmentEnd(segment: SegmentCase, rule: EndRule = "healed-and-bearing"): TreatmentEnd {
  if (fixators.has(segment.device)) return segment.fixatorRemovalDay;
  if (rule === "implant-removal") return segment.implantRemovalDay;
  if (rule === "twelve-months") return segment.surgeryDay + twelveMonthsDays;
  const { consolidationDay } = courseOf(segment);
  if (consolidationDay === null) return null;
  return Math.max(consolidationDay, segment.fullWeightBearingDay ?? consolidationDay);
}

export type Phase = "in-theatre" | "latency" | "distraction" | "consolidation" | "after";

/** The phase as recorded, else as the days of the segment say; `null` where neither is known. */
export function phaseOf(
  event: { readonly phase: Phase | null; readonly onsetDay: number | null },
  segment: SegmentCase,
  end: TreatmentEnd,
): Phase | null {
  if (event.phase !== null || event.onsetDay === null) return event.phase;
  const day = event.onsetDay;
  const { distractionEndDay } = courseOf(segment);
  if (end !== null && day > end) return "after";
  if (segment.distractionStartDay === null) return null;
  if (day < segment.distractionStartDay) return "latency";
  if (distractionEndDay === null || day <= distractionEndDay) return "distraction";
  return "consolidation";
}
