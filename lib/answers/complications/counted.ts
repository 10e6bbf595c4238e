import { type EndRule, type EventFacts, isComplication, phaseOf, type Scheme, treatmentEnd, tripleContractOf } from "@/lib/outcomes";
import type { Case } from "../frames/cases";
import type { HeldEvent, RecordedFacts } from "./events";

/** A segment with the events that count for it. */
export type CountedSegment = { readonly one: Case; readonly events: readonly RecordedFacts[]; readonly classes: readonly string[] };

export type Counting = {
  readonly scheme: Scheme;
  readonly endRule: EndRule;
  /** Pin-site infections left out, as when nails are held against frames. */
  readonly withoutPinSites: boolean;
  /** Rates of operations may also use segments where only serious events were looked for. */
  readonly operationsOnly: boolean;
};

/** Measures of operations may also use segments where only serious events were looked for. */
export function countsOperations(measure: string): boolean {
  return measure === "complication-return-to-theatre" || measure === "operations-per-segment";
}

export type Counted = { readonly segments: readonly CountedSegment[]; readonly notLookedFor: number };

/**
 * The events that count for each segment whose events were looked for. An event of the person counts once, with the operation before it.
 * A planned operation is no event; what followed from another event counts with it.
 */
export function countEvents(cases: readonly Case[], events: readonly HeldEvent[], counting: Counting): Counted {
  const lookedFor = cases.filter(
    ({ segment }) => segment.eventsLookedFor === "fully" || (counting.operationsOnly && segment.eventsLookedFor === "serious-only"),
  );
  const bySegment = new Map<number, RecordedFacts[]>();
  const home = homesOf(lookedFor);
  for (const event of events) {
    const segment = event.segment ?? home(event.person, event.facts.onsetDay);
    if (segment === null || !counts(event.facts, counting)) continue;
    const held = bySegment.get(segment);
    if (held) held.push(event.facts);
    else bySegment.set(segment, [event.facts]);
  }
  const segments = lookedFor.map((one) => {
    const own = bySegment.get(one.segment.segment) ?? [];
    return { one, events: own, classes: classesOf(one, own, counting) };
  });
  return { segments, notLookedFor: cases.length - lookedFor.length };
}

function counts(facts: EventFacts, { withoutPinSites }: Counting): boolean {
  if (!isComplication(facts) || facts.consequenceOf !== null) return false;
  return !(withoutPinSites && facts.eventType === "pin-site-infection");
}

/** Where an event of the person is counted: its last operation on or before the day, else its first. */
function homesOf(cases: readonly Case[]): (person: number, day: number | null) => number | null {
  const byPerson = new Map<number, Case[]>();
  for (const one of cases) byPerson.set(one.segment.person, [...(byPerson.get(one.segment.person) ?? []), one]);
  for (const held of byPerson.values())
    held.sort((a, b) => a.segment.surgeryDay - b.segment.surgeryDay || a.segment.segment - b.segment.segment);
  return (person, day) => {
    const held = byPerson.get(person) ?? [];
    const before = day === null ? [] : held.filter(({ segment }) => segment.surgeryDay <= day);
    return (before.at(-1) ?? held[0])?.segment.segment ?? null;
  };
}

function classesOf({ segment }: Case, events: readonly EventFacts[], { scheme, endRule }: Counting): readonly string[] {
  if (scheme.of === "segment") return [tripleContractOf(segment, events, { withTime: scheme.id === "triple-contract" }).class];
  const end = treatmentEnd(segment, endRule);
  return events.flatMap((event) => scheme.classify({ ...event, phase: phaseOf(event, segment, end) }, end) ?? []);
}
