import type { EventRow } from "@/lib/codebook";
import type { EventFacts } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { columnOf, valueAt } from "../frames/read";

const fields = [
  "eventType",
  "onsetDay",
  "phase",
  "handling",
  "planned",
  "planChanged",
  "resolved",
  "resolvedDay",
  "goalMissed",
  "lifeOrLimbThreat",
  "death",
  "sequela",
  "purpose",
  "consequenceOf",
] as const;

/** The class that the surgeon recorded, by the scheme. */
export const recordedClass = {
  "problem-obstacle": "classProblemObstacle",
  "triple-contract": "classTripleContract",
  "triple-contract-without-time": "classTripleContract",
  "three-level": "classThreeLevel",
  severity: "classSeverity",
  surgical: "classSurgical",
  "device-related": "classDevice",
} as const satisfies Readonly<Record<string, keyof EventRow>>;
type ClassField = (typeof recordedClass)[keyof typeof recordedClass];
const read = [...fields, ...new Set(Object.values(recordedClass))];

/** What an event holds: the facts that classes are derived from, and the classes recorded beside them. */
export type RecordedFacts = EventFacts & Pick<EventRow, ClassField>;

export type HeldEvent = {
  readonly facts: RecordedFacts;
  readonly person: number /** `null`: an event of the person. */;
  readonly segment: number | null;
};

/** Every event of a state, with its segment and person. */
export async function eventsOf(registry: Registry, state: State): Promise<readonly HeldEvent[]> {
  const frame = await registry.frameAsOf(state, "event", read);
  const events: HeldEvent[] = [];
  for (let row = 0; row < frame.length; row++) {
    // the frame's columns are typed by the codebook's kinds: the row that they give is the codebook's
    const facts = Object.fromEntries(read.map((field) => [field, valueAt(columnOf(frame, field), row)])) as RecordedFacts;
    const segment = frame.segmentEntity?.[row] ?? -1;
    events.push({ facts, person: frame.personEntity[row] as number, segment: segment < 0 ? null : segment });
  }
  return events;
}
