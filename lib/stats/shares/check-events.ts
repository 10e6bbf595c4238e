import type { PatientLabels } from "../record";
import { requireSameLength, requireSome } from "../require";

/** @throws when there is no row, lengths differ, or an event is neither 0 nor 1 */
export function requireEvents(caller: string, event: readonly number[], patient: PatientLabels): void {
  requireSome(caller, "row", event.length);
  requireSameLength(caller, "event", event.length, "patient", patient.length);
  const wrong = event.findIndex((value) => value !== 0 && value !== 1);
  if (wrong >= 0) throw new RangeError(`${caller} requires events of 0 or 1, received another value at ${wrong}`);
}
