import { eventTypes, fieldsOf, type Value } from "@/lib/codebook";
import { type CalendarDate, dayNumberOf } from "../strip";
import { type Draft, partOf } from "./draft";

/** An event coded from a comment. Codes and flags of the codebook only; its day as a date or as days after that row's surgery. */
export type CodedEvent = {
  readonly eventType: string;
  readonly onset?: { readonly date: CalendarDate } | { readonly daysAfterSurgery: number } | null;
  readonly values?: Readonly<Record<string, Value>>;
};
/** What the person coded of one row's comment; no events: nothing to code. */
export type CodedRow = { readonly file: string; readonly row: number; readonly events: readonly CodedEvent[] };

// numbers that no header uses, so that coded events stand beside those of columns
const firstNumber = 1000;
const fields: ReadonlyMap<string, string> = new Map(fieldsOf("event").map(([id, { kind }]) => [id, kind]));

/** Adds coded events to a row's draft. A row whose comment was looked at counts as one whose events were looked for. */
export function addCodedEvents(draft: Draft, { events }: CodedRow): void {
  if (events.length === 0) draft.noEvents = true;
  for (const [i, { eventType, onset = null, values = {} }] of events.entries()) {
    if (!(eventTypes as readonly string[]).includes(eventType))
      throw new RangeError(`addCodedEvents requires an event type of the codebook, received ${eventType}`);
    const part = partOf(draft, "event", null, firstNumber + i);
    part.values.eventType = eventType;
    if (onset) part.values.onsetDay = "date" in onset ? { on: dayNumberOf(onset.date), swapped: null } : { after: onset.daysAfterSurgery };
    for (const [field, value] of Object.entries(values)) if (mayCode(field) && value !== null) part.values[field] = value;
  }
}

function mayCode(field: string): boolean {
  const kind = fields.get(field);
  return kind === "code" || kind === "flag";
}
