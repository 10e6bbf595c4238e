import { type EventOrigin, type EventRow, type EventType, originOf } from "@/lib/codebook";

/** What a class is derived from. Days are on the person's own line. */
export type EventFacts = Pick<
  EventRow,
  | "eventType"
  | "onsetDay"
  | "phase"
  | "handling"
  | "planned"
  | "planChanged"
  | "resolved"
  | "resolvedDay"
  | "goalMissed"
  | "lifeOrLimbThreat"
  | "death"
  | "sequela"
  | "purpose"
  | "consequenceOf"
>;

/** When treatment of the segment ended, on the person's line; `null`: it hasn't, or isn't known. */
export type TreatmentEnd = number | null;

const operations: ReadonlySet<string | null> = new Set(["operation-under-anaesthesia", "implant-exchanged"]);

/** A planned removal, exchange or release is an operation, never a complication. */
export function isComplication({ planned }: EventFacts): boolean {
  return planned !== true;
}

/** An unplanned operation under anaesthesia. */
export function neededOperation({ handling, planned }: EventFacts): boolean {
  return operations.has(handling) && planned !== true;
}

export function inTheatre({ phase, eventType }: EventFacts): boolean {
  return phase === "in-theatre" || eventType === "fracture-in-theatre";
}

/** Onset after the end of treatment; an event without an onset day goes by its recorded phase. */
export function beganAfter({ onsetDay, phase }: EventFacts, end: TreatmentEnd): boolean {
  if (onsetDay !== null && end !== null) return onsetDay > end;
  return phase === "after";
}

/** Resolved by the end of treatment. Not recorded as resolved, with a lasting sequela, or resolved later: not. */
export function resolvedBy({ resolved, resolvedDay, sequela }: EventFacts, end: TreatmentEnd): boolean {
  if (sequela === "permanent" || resolved === false) return false;
  if (resolvedDay !== null && end !== null) return resolvedDay <= end;
  return resolved === true || sequela === "none" || sequela === "temporary";
}

export function originOfEvent({ eventType }: EventFacts): EventOrigin {
  return originOf(eventType as EventType);
}
