import { indexPatients, type PatientIndex } from "../cluster/patients";
import type { PatientLabels } from "../record";

/** Patients of the rows; without labels every row is its own patient. */
export function patientsOf(patient: PatientLabels | undefined, rows: number): PatientIndex {
  if (patient) return indexPatients(patient);
  return { codes: Int32Array.from({ length: rows }, (_, row) => row), count: rows, rows: new Int32Array(rows).fill(1) };
}
