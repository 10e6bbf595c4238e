export { longestCell } from "./clean";
export { describeCell } from "./describe";
export { type ColumnContext, detectInCell } from "./detect-in-cell";
export { type ColumnDetector, detectInColumn, makeColumnDetector, type SuspiciousCell } from "./detect-in-column";
export { detectInFileName, detectInHeader } from "./detect-in-header";
export { knownWordsOf } from "./names/known-words";
export { type ColumnSuspect, suspectColumn, type TalliedColumn } from "./suspect-column";
export type { Suspicion, SuspicionKind } from "./suspicion";
