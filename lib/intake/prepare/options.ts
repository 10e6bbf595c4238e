import type { KeyRing } from "../key";
import type { CalendarDate } from "../strip";
import type { LengthUnit, Mapping, Sheet, StrippedRows } from "../types";
import type { CodedRow } from "./coded-events";

export type Progress = { readonly step: "read" | "key" | "check"; readonly done: number; readonly of: number };
export type RowAnswer = { readonly file: string; readonly row: number; readonly code: string; readonly answer: string };

export type PrepareOptions = {
  readonly sheets: readonly Sheet[];
  readonly mapping?: Mapping;
  /** Without a ring the columns are matched and asked about, and no row is read. */
  readonly ring: KeyRing | null;
  /** Code of the unit for rows without a column that says it. */
  readonly unit?: string;
  readonly today: CalendarDate;
  readonly auditYearStartsIn?: number;
  readonly yearOnly?: boolean;
  /** Unit of lengths where neither header nor values tell it. */
  readonly lengths?: LengthUnit | null;
  /** The unit's own lists: a code that isn't on its list isn't taken, since a name could have its form. Without `units`, `unit` alone. */
  readonly units?: readonly string[];
  readonly scores?: readonly string[];
  readonly proportionReferences?: readonly string[];
  /** What the registry holds, so that the tab can tell new from known. */
  readonly held?: StrippedRows | null;
  /** Comments coded by the person: events of a row, or none where there was nothing to code. */
  readonly eventsCoded?: readonly CodedRow[];
  /** Answers to questions of single rows; those of the mapping hold for all rows. */
  readonly rowAnswers?: readonly RowAnswer[];
  readonly onProgress?: (progress: Progress) => void;
  readonly signal?: AbortSignal | null;
};
