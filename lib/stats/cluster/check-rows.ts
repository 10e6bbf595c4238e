import type { PatientLabels } from "../record";
import { requireFinite, requireSameLength, requireSome } from "../require";

/** What every method on values of patients asks: at least one value, finite, and a patient for each. */
export function requireRows(caller: string, values: readonly number[], patient: PatientLabels): void {
  requireSome(caller, "value", values.length);
  requireSameLength(caller, "values", values.length, "patient", patient.length);
  requireFinite(caller, "values", values);
}
