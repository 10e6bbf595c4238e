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

export type HeldEvent = {
  readonly facts: EventFacts;
  readonly person: number /** `null`: an event of the person. */;
  readonly segment: number | null;
};

/** Every event of a state, with its segment and person. */
export async function eventsOf(registry: Registry, state: State): Promise<readonly HeldEvent[]> {
  const frame = await registry.frameAsOf(state, "event", fields);
  const events: HeldEvent[] = [];
  for (let row = 0; row < frame.length; row++) {
    // the frame's columns are typed by the codebook's kinds: the row that they give is the codebook's
    const facts = Object.fromEntries(fields.map((field) => [field, valueAt(columnOf(frame, field), row)])) as EventFacts;
    const segment = frame.segmentEntity?.[row] ?? -1;
    events.push({ facts, person: frame.personEntity[row] as number, segment: segment < 0 ? null : segment });
  }
  return events;
}
