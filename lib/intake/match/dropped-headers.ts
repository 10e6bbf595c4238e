import { commentHeaders, directIdentifierHeaders, fold, nationalNumberHeaders, typedIndexHeaders } from "@/lib/codebook";
import { headerParts } from "./header-unit";
import { withoutNumber } from "./lookup";

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

const foldAll = (headers: readonly string[]) => new Set(headers.map(fold));
const direct = foldAll(directIdentifierHeaders);
const national = foldAll(nationalNumberHeaders);
const comments = foldAll(commentHeaders);
const indices = foldAll(typedIndexHeaders);

/** The reason for which a header is dropped by what it says, whatever else it could mean; `null` when it may be mapped. */
export function dropReasonOf(header: string): DropReason | null {
  const whole = fold(header);
  if (whole === "") return "blank-header";
  const { words } = headerParts(header);
  const counted = withoutNumber(whole)?.words ?? whole;
  const says = (list: ReadonlySet<string>) => list.has(whole) || list.has(words) || list.has(counted);
  if (says(national)) return "national-number";
  if (says(direct)) return "direct-identifier";
  if (says(comments)) return "comments";
  return says(indices) ? "typed-index" : null;
}
