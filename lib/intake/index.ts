// biome-ignore-all assist/source/organizeImports: the door stands under headings, not in alphabetical order
// What intake says and makes
export type {
  DateOrder,
  Delimiter,
  Encoding,
  Finding,
  LengthUnit,
  Mapping,
  Origin,
  Sheet,
  Stripped,
  StrippedRows,
  TimeUnit,
} from "./types";

// Reading files
export { defaultLimits, type Limits } from "./read/limits";
export { type FileRead, type ReadFileOptions, readFile } from "./read/read-file";
export { readSheet } from "./read/read-sheet";
export type { SheetRead } from "./read/sheet-of";
export type { SkippedSheet } from "./read/workbook/choose-sheets";

// Matching columns
export type { ColumnMatch, SheetMatch } from "./match/column-match";
export type { DropReason } from "./match/drop-reason";
export { matchSheet } from "./match/match-sheet";
export type { SheetKind } from "./match/sheet-kind";
export { type Target, targetId } from "./match/target";

// Mappings
export { emptyMapping } from "./mapping/empty-mapping";
export { mappingFor, mappingName, type SavedMapping } from "./mapping/mapping-for";
export { mappingToKeep } from "./mapping/mapping-to-keep";
export { mergeMappings } from "./mapping/merge-mappings";
export { answersOf, mappingSchema, parseMapping } from "./mapping/mapping-schema";

// From files to stripped rows
export type { CodedEvent, CodedRow } from "./prepare/coded-events";
export type { HeldCorrection, Joined, PrepareOptions, Progress, RowAnswer } from "./prepare/options";
export { prepare } from "./prepare/prepare";
export type { Change, Comment, Dropped, FindingGroup, News, Prepared, Refused, Sample, TableCounts } from "./prepare/prepared";
export type { Question } from "./prepare/question";
export { type RefusedFile, refusedCsv, refusedFiles } from "./prepare/refused-csv";

// Checks of stripped rows, run again where they are kept
export { type CellCheck, cellChecks } from "./check/cell-check";
export { checkRows } from "./check/check-rows";

// Of two rows that say the same thing, which word holds
export { type Made, saidBeside } from "./merge/how-made";

// From the tab to the registry
export { type CommitCollector, collectCommit } from "./wire/collect-commit";
export { type CommitLine, decodeLine } from "./wire/decode-line";
export { type Commit, countFindings, encodeCommit } from "./wire/encode-commit";
export type { CommitHead } from "./wire/head";
export { WireError } from "./wire/wire-error";

// Templates and tables written here
export { writeCsv } from "./csv/write-csv";
export { templateCsv } from "./template/template-csv";

// The unit's key
export * from "./key";

// Strip
export * from "./strip";

// Identifiers that look wrong where they stand
export * from "./detect";
