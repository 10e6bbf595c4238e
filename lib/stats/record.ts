import type { Note } from "./notes";

/** The answer of a method of estimation. `null` means not estimable or not reached; a note or the docstring says why. */
export interface Estimate {
  readonly estimate: number | null;
  readonly se: number | null;
  readonly df: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Rows analysed (segments, cases). */
  readonly n: number;
  /** Patients with at least one row; null where the method knows no patients. */
  readonly patients: number | null;
  /** As it would be written in a paper. */
  readonly method: string;
  /** The one used where several compete. */
  readonly convention?: string;
  readonly notes: readonly Note[];
}

/** The answer of a test. */
export interface TestResult {
  readonly statistic: number | null;
  readonly df: number | null;
  readonly p: number | null;
  readonly n: number;
  readonly patients: number | null;
  readonly method: string;
  readonly convention?: string;
  readonly notes: readonly Note[];
}

/** Whose row it is: one label a row, equal labels are the same patient. */
export type PatientLabels = readonly (string | number)[];
