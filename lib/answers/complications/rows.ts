import type { ComplicationMeasure } from "@/lib/outcomes";
import type { Row } from "../measures/measured";
import type { CountedSegment } from "./counted";

/** Whether a segment, or a patient, had any event: one row each. */
export function shareRows(definition: ComplicationMeasure, segments: readonly CountedSegment[]): Row[] {
  if (definition.of === "segment")
    return segments.map(({ one, events }) => ({
      person: one.segment.person,
      segment: one.segment.segment,
      value: Number(events.length > 0),
    }));
  const any = new Map<number, number>();
  for (const { one, events } of segments) {
    const person = one.segment.person;
    any.set(person, Math.max(any.get(person) ?? 0, Number(events.length > 0)));
  }
  return [...any].map(([person, value]) => ({ person, segment: null, value }));
}

/** `segment` is `null` where the row is a patient. */
export type RateRow = { readonly person: number; readonly segment: number | null; readonly events: number; readonly exposure: number };

/** Events and exposure of each segment, or of each patient; a segment that gained nothing has no centimetres to be exposed to. */
export function rateRows(definition: ComplicationMeasure, segments: readonly CountedSegment[]): RateRow[] {
  const rows = segments.map(({ one, events }) => ({
    person: one.segment.person,
    segment: one.segment.segment,
    events: events.length,
    exposure: definition.id === "complication-events-per-10cm" ? (one.segment.gainMm ?? 0) / 10 : 1,
  }));
  return definition.of === "person" ? perPerson(rows) : rows.filter(({ exposure }) => exposure > 0);
}

function perPerson(rows: readonly Pick<RateRow, "person" | "events">[]): RateRow[] {
  const sums = new Map<number, number>();
  for (const { person, events } of rows) sums.set(person, (sums.get(person) ?? 0) + events);
  return [...sums].map(([person, events]) => ({ person, segment: null, events, exposure: 1 }));
}
