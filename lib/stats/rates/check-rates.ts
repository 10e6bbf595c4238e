import type { PatientLabels } from "../record";
import { requireCount, requirePositive, requireSameLength, requireSome } from "../require";

/** Rows of counted events over exposure, of patients. @throws when lengths differ, a count isn't whole, or an exposure isn't above zero */
export function requireRates(caller: string, events: readonly number[], exposure: readonly number[], patient: PatientLabels): void {
  requireSome(caller, "row", events.length);
  requireSameLength(caller, "events", events.length, "exposure", exposure.length);
  requireSameLength(caller, "events", events.length, "patient", patient.length);
  events.forEach((count, i) => {
    requireCount(caller, `events at ${i}`, count);
    requirePositive(caller, `exposure at ${i}`, exposure[i] as number);
  });
}
