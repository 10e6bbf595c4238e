import type { DropReason } from "../match/drop-reason";

/** Why a column isn't kept, as the person reads it. */
export const dropWording: Readonly<Record<DropReason, string>> = {
  "matches-nothing": "The header means no field. If it holds something that should be kept, say which field it is.",
  "blank-header": "It has no header. If it holds something that should be kept, give it one or say which field it is.",
  "direct-identifier": "It identifies a person: never kept, never sent.",
  "national-number":
    "It is a national number: never kept. It can serve as local number if you say so, and is then turned into a pseudonym.",
  "identifier-in-header": "Its header looks like a person’s name or number.",
  comments: "Text is never kept. Code what it says beside the row first, or mark that there is nothing to code.",
  "typed-index": "An index is never kept: it is compared with the one that days and gain give.",
  "another-local-number": "Another column is the local number of this sheet.",
  "empty-column": "It is blank in every row, and another column holds the field.",
  "by-your-word": "You said so.",
};
