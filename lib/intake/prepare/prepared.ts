import type { FindingCode, Severity, TableName, Value } from "@/lib/codebook";
import type { SuspicionKind } from "../detect";
import type { SheetMatch } from "../match/column-match";
import type { DropReason } from "../match/drop-reason";
import type { Finding, Mapping, Origin, Sheet, Stripped, StrippedRows } from "../types";
import type { HeldCorrection } from "./options";
import type { Question } from "./question";

/** Findings of one kind in one column, and what they cost: rows set aside, or rows waiting for an answer. */
export type FindingGroup = {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly file: string | null;
  readonly column: string | null;
  readonly rows: number;
  /** Segments that mending would bring back: rows that nothing else keeps aside. */
  readonly bringsBack: number;
};

/** A column that isn't kept. `holds`: kinds of identifier found in its cells for certain; none found is no proof that there are none. */
export type Dropped = {
  readonly file: string;
  readonly header: string;
  readonly why: DropReason;
  readonly holds: readonly SuspicionKind[];
};
export type Refused = { readonly file: string; readonly row: number; readonly reasons: readonly Finding[] };
export type Comment = {
  readonly file: string;
  readonly row: number;
  readonly header: string;
  readonly text: string;
  readonly coded: boolean;
};
/** One row as it stood and as it would be sent, for the page that shows what was stripped. It stays in the tab. */
export type Sample = Origin & {
  readonly before: readonly { readonly header: string; readonly cell: string }[];
  readonly after: readonly { readonly table: TableName; readonly values: Readonly<Record<string, string | number | boolean>> }[];
};
/** A field that a row would change. `file`, `row`: the row that says so. */
export type Change = Origin & {
  readonly table: TableName;
  readonly field: string;
  readonly from: Value;
  readonly to: Value;
  /** Of a day: `from` and `to` are days from the segment's surgery, or, of a row without one, from the day held. */
  readonly days: "from-surgery" | "from-held" | null;
  /** The field was corrected by hand, which holds unless the person takes the sheet's value. */
  readonly corrected: HeldCorrection | null;
};
/** What files bring against what is held. It stays in the tab. */
export type News = {
  readonly fresh: Readonly<Record<TableName, readonly Origin[]>>;
  readonly changes: readonly Change[];
  /** Rows held that the files don't name, of the tables that they hold rows of. They stay held. */
  readonly absent: { readonly [T in TableName]: readonly Stripped<T>[] };
};
export type TableCounts = Readonly<Record<TableName, number>>;

/** What a load of files comes to. Everything but `rows` stays where the files are. */
export type Prepared = {
  /** Columns must be settled first: no row was read. */
  readonly stage: "columns" | "rows";
  readonly rows: StrippedRows;
  /** Ordered by what they cost. */
  readonly findings: readonly Finding[];
  readonly groups: readonly FindingGroup[];
  readonly questions: readonly Question[];
  readonly dropped: readonly Dropped[];
  readonly refused: readonly Refused[];
  readonly comments: readonly Comment[];
  readonly samples: readonly Sample[];
  readonly counts: {
    readonly rowsRead: number;
    readonly rowsRefused: number;
    readonly made: TableCounts;
    /** Of `made`, against what is held; `null` when that wasn't given. */
    readonly fresh: TableCounts | null;
    readonly changed: TableCounts | null;
    readonly unchanged: TableCounts | null;
    /** Held and not in these files; they stay held. */
    readonly absent: TableCounts | null;
  };
  /** `null` when what is held wasn't given, or no row was read. */
  readonly news: News | null;
  readonly matches: readonly { readonly file: string; readonly match: SheetMatch }[];
  /** The mapping with everything settled, to be saved for the next file of this shape. */
  readonly mapping: Mapping;
  /** The same for each sheet, by its `file`. */
  readonly mappings: Readonly<Record<string, Mapping>>;
  readonly sheets: readonly Sheet[];
};
