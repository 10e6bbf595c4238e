import { neededOperation, phaseOf, treatmentEnd } from "@/lib/outcomes";
import type { CountedSegment } from "./counted";

/** The segments with their unplanned operations alone. */
export function operationsOf(segments: readonly CountedSegment[]): readonly CountedSegment[] {
  return segments.map((counted) => ({ ...counted, events: counted.events.filter(neededOperation) }));
}

/** Unplanned operations by what they were for and in which phase: `joint, consolidation`. */
export function operationsByPurpose(segments: readonly CountedSegment[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { one, events } of operationsOf(segments)) {
    const end = treatmentEnd(one.segment);
    for (const event of events) {
      const name = `${event.purpose ?? "purpose not recorded"}, ${phaseOf(event, one.segment, end) ?? "phase not recorded"}`;
      counts[name] = (counts[name] ?? 0) + 1;
    }
  }
  return counts;
}
