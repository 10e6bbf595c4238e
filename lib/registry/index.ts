// biome-ignore-all assist/source/organizeImports: the door stands under headings, not in alphabetical order
// A registry
export { openRegistry, type OpenOptions, type Registry } from "./registry";
export type { Check } from "./commit/check-brought";
export type { CommitOptions } from "./commit/commit";
export type { CommitPace } from "./pace";
export type { LinesOptions } from "./background/commit-lines";
export type { HeldRow } from "./read/rows";
export type { CaseRow } from "./read/rows-of-case";
export type { RowVersion } from "./read/versions";
export { type CorrectOptions, type CorrectResult, isCorrectable } from "./correct/correct";
export type { Correction } from "./correct/standing";
export type { Join, Member } from "./join/groups";
export type { JoinOptions, JoinResult } from "./join/join";

// What it answers
export type {
  Batch,
  BatchKind,
  CommitResult,
  CountName,
  Counts,
  FindingCounts,
  Frame,
  FrameColumn,
  SealedKey,
  Settings,
  State,
  UndoResult,
  UnitKeyRecord,
} from "./types";
export { countNames } from "./counts";
export { defaultSettings } from "./keep/settings";

// Why it refuses
export { NothingCommitted, type RowFinding, RowsRefused, StopTooLate, UnitKeyRefused } from "./errors";
export { NotOnePatient } from "./join/not-one-patient";
export { type OpenTrouble, RegistryNotOpened } from "@/db/errors";
