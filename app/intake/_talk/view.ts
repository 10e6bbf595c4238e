import type { Severity, TableName, Value } from "@/lib/codebook";
import type { Dropped, Finding, Mapping, Prepared, Question, SheetKind, SkippedSheet, TableCounts } from "@/lib/intake";

/** A file as it arrived: its sheets, none when it is refused. It stays in the tab, its name too. */
export type Arrived = {
  readonly file: string;
  readonly sheets: readonly SheetArrived[];
  readonly findings: readonly Finding[];
  readonly skipped: readonly SkippedSheet[];
};
export type SheetArrived = {
  readonly name: string;
  readonly encoding: string;
  readonly delimiter: string;
  readonly columns: number;
  readonly rows: number;
  readonly ragged: number;
  readonly headerRow: number;
};

/** A column, what it was taken for, and three cells of it. */
export type ColumnShown = {
  readonly header: string;
  /** The FIELD of a mapping; `null` when it is dropped. */
  readonly field: string | null;
  readonly how: "alias" | "mapping" | null;
  readonly unit: string | null;
  /** Units that could be said of it. */
  readonly units: readonly string[];
  readonly why: Dropped["why"] | null;
  /** Kinds of identifier that a dropped column's cells hold for certain. */
  readonly holds: Dropped["holds"];
  readonly samples: readonly string[];
};
export type SheetShown = { readonly file: string; readonly kind: SheetKind; readonly columns: readonly ColumnShown[] };

/** A question with the first of the rows that wait for it. */
export type Asked = Omit<Question, "rows"> & { readonly rows: number; readonly firstRows: readonly number[] };

export type GroupShown = Prepared["groups"][number] & { readonly key: string; readonly firstRows: readonly number[] };

/** What becomes of one cell: `out` is taken out, `turned` is sent as something else, `kept` is sent as what it says. */
export type CellShown = {
  readonly header: string;
  readonly cell: string;
  readonly fate: "out" | "turned" | "kept" | "blank";
  readonly becomes: string | null;
};
/** A row twice: as it stands in the file and as it would be sent. */
export type SampleShown = { readonly file: string; readonly row: number; readonly cells: readonly CellShown[] };

/** A field in which rows differ from what is held, with the first of its cells. */
export type ChangeShown = {
  readonly table: TableName;
  readonly field: string;
  readonly rows: number;
  readonly cells: readonly CellChanged[];
};
/** A cell that says something else than what is held. Days from the segment's surgery. */
export type CellChanged = {
  readonly file: string;
  readonly row: number;
  readonly isDay: boolean;
  readonly held: Value;
  readonly says: Value;
};
/** A cell that says something else than a correction by hand, and than the sheet said before it. */
export type CorrectedShown = CellChanged & { readonly table: TableName; readonly field: string };
/** A row that is held and not in the files, as far as the registry can name it. */
export type AbsentShown = { readonly table: TableName; readonly words: string };

/** Everything that the page shows of prepared files. Rows, key and sheets stay in the worker. */
export type View = {
  readonly stage: Prepared["stage"];
  readonly sheets: readonly SheetShown[];
  readonly dates: Mapping["dates"];
  readonly questions: readonly Asked[];
  readonly groups: readonly GroupShown[];
  readonly findingsBy: Readonly<Record<Severity, number>>;
  readonly counts: Prepared["counts"];
  readonly comments: readonly { readonly file: string; readonly row: number }[];
  readonly samples: readonly SampleShown[];
  readonly changes: readonly ChangeShown[];
  readonly corrected: { readonly cells: readonly CorrectedShown[]; readonly of: number };
  readonly absent: { readonly rows: readonly AbsentShown[]; readonly of: TableCounts };
};

/** A comment beside what else its row says. */
export type CommentShown = {
  readonly index: number;
  readonly file: string;
  readonly row: number;
  readonly header: string;
  readonly text: string;
  readonly facts: readonly { readonly header: string; readonly cell: string }[];
  /** Other comments with the same words, by index. */
  readonly alike: readonly number[];
};

export type RefusedShown = { readonly file: string; readonly row: number; readonly reasons: readonly Finding[] };
