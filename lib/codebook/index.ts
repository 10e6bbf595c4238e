// Tables and their rows
export {
  type BodyMeasureRow,
  byTable,
  type EventRow,
  fieldOf,
  fieldsOf,
  type PersonRow,
  type Rows,
  type ScoreRow,
  type SegmentRow,
  type TemplateName,
  tableNames,
  tables,
  templateNames,
  type VisitRow,
  versionedFieldsOf,
} from "./codebook";
// Corrections
export { type CorrectionReason, correctionReasons } from "./correction-reasons";
// What a field is
export type { CodeField, DayField, Field, Known, Range, Role, RowOf, Table, TableName, Unit, Value } from "./field";
// Fields and headers of a file that are never stored
export {
  commentHeaders,
  directIdentifierHeaders,
  type FileOnlyField,
  fileOnlyFields,
  nationalNumberHeaders,
  releaseWords,
  typedIndexHeaders,
} from "./file-only";
// Findings and reasons
export { type FindingCode, fileRefusals, findingSeverities, type Severity } from "./findings";
export { flagOf } from "./flags";
export { camel, fold, labelOfCode, ownIndexId, snake, wordsOfCode } from "./names";
// Names and spellings
export { codebookPage } from "./page";
export {
  type DeviceKind,
  deviceKindOf,
  deviceKinds,
  fixatorDevices,
  type HealingStatus,
  healingStatuses,
  nailDevices,
  type Reason,
  reasons,
} from "./reasons";
export { canBeFound, wordsOfSearch } from "./search-words";
export { type EventOrigin, type EventType, eventTypes, eventTypesByOrigin, noEventValues, originOf } from "./tables/event-types";
