import type { EventRow } from "@/lib/codebook";
import { isComplication, originOfEvent, phaseOf, type SegmentCase, schemes, treatmentEnd, tripleContractOf } from "@/lib/outcomes";
import { type Held, heldOf } from "./days";
import type { With } from "./rows-of-case";

/** An event of a segment or of the person, with the class that each published scheme derives from its facts. */
export type CaseEvent = {
  readonly event: number;
  readonly type: string;
  readonly origin: string;
  /** Days from the segment's surgery; of the person, from the first operation. `null`: not recorded. */
  readonly day: number | null;
  /** As recorded, or as the days say. */
  readonly phase: string | null;
  readonly phaseDerived: boolean;
  /** A planned operation is no complication and has no class. */
  readonly complication: boolean;
  readonly classes: readonly { readonly scheme: string; readonly class: string }[];
  readonly recorded: readonly Held[];
};

const ofEvents = schemes.filter((scheme) => scheme.of === "event");
const told: ReadonlySet<string> = new Set(["eventType", "eventNumber", "onsetDay", "phase"]);

export function caseEventOf({ entity, row }: With<EventRow>, segment: SegmentCase | null, zero: number | null): CaseEvent {
  const end = segment === null ? null : treatmentEnd(segment);
  const phase = segment === null ? row.phase : phaseOf(row, segment, end);
  const complication = isComplication(row);
  const facts = { ...row, phase };
  return {
    event: entity,
    type: row.eventType,
    origin: originOfEvent(row),
    day: row.onsetDay === null || zero === null ? null : row.onsetDay - zero,
    phase,
    phaseDerived: row.phase === null && phase !== null,
    complication,
    classes: complication ? ofEvents.flatMap((scheme) => classOf(scheme.id, scheme.classify(facts, end))) : [],
    recorded: heldOf("event", row, zero, () => null).filter(({ field }) => !told.has(field)),
  };
}

function classOf(scheme: string, derived: string | null): CaseEvent["classes"] {
  return derived === null ? [] : [{ scheme, class: derived }];
}

/** The class of a segment's whole treatment, with and without the rule of time; `null` where its events were not looked for. */
export function contractOf(
  segment: SegmentCase,
  events: readonly With<EventRow>[],
): { readonly withTime: string; readonly withoutTime: string } | null {
  if (segment.eventsLookedFor !== "fully") return null;
  const facts = events.map(({ row }) => row);
  return {
    withTime: tripleContractOf(segment, facts).class,
    withoutTime: tripleContractOf(segment, facts, { withTime: false }).class,
  };
}
