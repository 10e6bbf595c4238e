import type { FindingCode, Rows, Severity, TableName } from "@/lib/codebook";

/** What intake has to say about a file, column, row or cell. `found` describes; it never quotes a cell. Row numbers are the file's own, 1 = first line. */
export type Finding = {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly file: string | null;
  readonly row: number | null;
  readonly column: string | null;
  readonly field: string | null;
  readonly found: string;
  readonly expected: string;
  readonly mend: string;
};

export type Delimiter = "," | ";" | "\t";
/** `workbook`: no text at all, a spreadsheet's own format. */
export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252" | "workbook";
export type DateOrder = "dmy" | "mdy" | "ymd";
export type LengthUnit = "mm" | "cm" | "m" | "in";
export type TimeUnit = "days" | "weeks" | "months" | "years";

/**
 * A file as read, or one sheet of a workbook (`file` is then `log.xlsx · 2024`): strings only. `headers` names each column once (a repeated header gets ` #2`, a blank one is `column 7`) and is the key of
 * a mapping; `headerCells` are the headers as typed. `rowNumbers[i]` is the file's own line number of `rows[i]`.
 */
export type Sheet = {
  readonly file: string;
  readonly encoding: Encoding;
  readonly delimiter: Delimiter;
  readonly headers: readonly string[];
  readonly headerCells: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly rowNumbers: readonly number[];
  /** Rows with more or fewer cells than the headers: set aside, since none of their cells can be trusted to stand in its column. */
  readonly ragged: readonly { readonly row: number; readonly cells: readonly string[] }[];
};

/**
 * The saved mapping (ids.md §11): nothing of a row. A FIELD is a codebook id, or a file-only id, with an optional suffix:
 * `.before` / `.final` for the two body measures of a one-sheet row, `.N` for numbered visit, event and score columns
 * (`eventType.2`). `null`: dropped by the person's word.
 */
export type Mapping = {
  readonly columns: Readonly<Record<string, string | null>>;
  readonly units: Readonly<Record<string, LengthUnit | TimeUnit>>;
  readonly dates: DateOrder | null;
  readonly decimal: "," | "." | null;
  /** By field and spelling; an empty code means *not recorded*. */
  readonly values: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly answers: Readonly<Record<string, string>>;
};

declare const stripped: unique symbol;
/** A row that the strip step made: the only kind that the registry takes. */
export type Stripped<T extends TableName> = Rows[T] & { readonly [stripped]: T };
export type StrippedRows = { readonly [T in TableName]: readonly Stripped<T>[] };

/** Where a stripped row came from, in the tab only: the file's row, and its columns by field. */
export type Origin = { readonly file: string; readonly row: number };
