/** Why a column is not kept. */
export type DropReason =
  | "matches-nothing"
  | "blank-header"
  | "direct-identifier"
  | "national-number"
  | "identifier-in-header"
  | "comments"
  | "typed-index"
  | "another-local-number"
  | "empty-column"
  | "by-your-word";
