import type { TableName, Value } from "@/lib/codebook";
import type { KeyRing } from "../key";
import type { CalendarDate } from "../strip";
import type { LengthUnit, Mapping, Sheet, StrippedRows } from "../types";
import type { CodedRow } from "./coded-events";

/** How far the work is, step after step: rows, or persons where keys are made. `done` never falls within a step, and ends at `of`. */
export type Progress = {
  readonly step: "read" | "key" | "strip" | "check" | "compare";
  readonly done: number;
  readonly of: number;
};
export type RowAnswer = { readonly file: string; readonly row: number; readonly code: string; readonly answer: string };

/** A number that the registry reads as another's of the same patient: its days lie `days` further on that one's line. */
export type Joined = { readonly person: string; readonly as: string; readonly days: number };
/** A field corrected by hand: the row's natural key, what the unit's sheet said of it, and what holds. Days on the line of the patient's first number. */
export type HeldCorrection = {
  readonly table: TableName;
  readonly key: Readonly<Record<string, Value>>;
  readonly field: string;
  readonly sheet: Value;
  readonly value: Value;
};

export type PrepareOptions = {
  readonly sheets: readonly Sheet[];
  readonly mapping?: Mapping;
  /** Mappings of single sheets, by their `file`, before the one for all: saved ones that fit, say. */
  readonly mappings?: Readonly<Record<string, Mapping>>;
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
  /** What the registry keeps beside its rows: numbers of one patient joined, fields corrected by hand. */
  readonly joins?: readonly Joined[];
  readonly corrections?: readonly HeldCorrection[];
  /** Comments coded by the person: events of a row, or none where there was nothing to code. */
  readonly eventsCoded?: readonly CodedRow[];
  /** Answers to questions of single rows; those of the mapping hold for all rows. */
  readonly rowAnswers?: readonly RowAnswer[];
  readonly onProgress?: (progress: Progress) => void;
  readonly signal?: AbortSignal | null;
};
