import { counted, listed } from "@/lib/charts";
import { labelOfCode, type Severity, type TableName } from "@/lib/codebook";
import type { Dropped, TableCounts } from "@/lib/intake";
import type { CellChanged } from "../_talk/view";

/** `81 segments of 52 patients`; of a sheet without segments `1334 visits of 83 patients`. */
export function madeWords({ person, ...made }: TableCounts): string {
  const shown = made.segment > 0 ? [["segment", made.segment] as const] : typedEntries(made).filter(([, n]) => n > 0);
  const rows = shown.map(([table, n]) => counted(n, nouns[table]));
  return rows.length === 0 ? counted(person, "patient") : `${listed(rows)} of ${counted(person, "patient")}`;
}

const typedEntries = (made: Omit<TableCounts, "person">) => Object.entries(made) as [Exclude<TableName, "person">, number][];

/** Why a column is left out. */
export const dropWords: Readonly<Record<Dropped["why"], string>> = {
  "matches-nothing": "its header means no field",
  "blank-header": "it has no header",
  "direct-identifier": "it identifies a person; never kept, never sent",
  "national-number": "a national number; never kept, and of use as local number only if you say so",
  "identifier-in-header": "its header looks like a person’s name or number; change the header",
  comments: "text is never kept; code what it says first",
  "typed-index": "a typed index; compared with the one that days and gain give",
  "another-local-number": "another column is the local number",
  "empty-column": "blank in every row, and another column holds the field",
  "by-your-word": "by your word",
};
/** `holds names, phones`: what the cells of a column left out were seen to hold. None seen is no proof that there are none. */
export function holdsWords(holds: Dropped["holds"]): string {
  return holds.length === 0 ? "" : `; its cells hold: ${holds.map((kind) => kind.replaceAll("-", " ")).join(", ")}`;
}

/** Columns that no word of anybody’s can bring in. */
export const neverMapped: ReadonlySet<Dropped["why"]> = new Set(["direct-identifier", "identifier-in-header", "comments", "typed-index"]);

export const howWords = { alias: "by its header", mapping: "by your word" } as const;

export const severityWords: Readonly<Record<Severity, { readonly head: string; readonly about: string }>> = {
  error: {
    head: "Set aside until mended",
    about: "These rows stay out. Mend them in your sheet and bring it again: nothing is counted twice.",
  },
  ask: { head: "Asked about", about: "Answered here, once for all rows or row by row." },
  warn: { head: "Kept, and worth a look", about: "Nothing need be done before these are kept." },
  note: { head: "For the record", about: "Nothing to do." },
};

export const nouns: Readonly<Record<TableName, string>> = {
  person: "patient",
  bodyMeasure: "body measure",
  segment: "segment",
  visit: "visit",
  event: "event",
  score: "score",
};

/** A value that is held, or that a cell says: `day 146`, `blank`, `magnetic nail`. */
export function cellWords(cell: CellChanged, which: "held" | "says"): string {
  const value = cell[which];
  if (value === null) return "blank";
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "number" ? `${cell.isDay ? "day " : ""}${value}` : labelOfCode(value).toLowerCase();
}

/** What an answer to a question means. */
export const answerWords: Readonly<Record<string, string>> = {
  dmy: "Day first",
  mdy: "Month first",
  ymd: "Year first",
  ",": "A comma marks the decimals",
  ".": "A point marks the decimals",
  mm: "Millimetres",
  cm: "Centimetres",
  days: "Days",
  weeks: "Weeks",
  months: "Months",
  same: "The same",
  new: "A new one",
  different: "Different patients",
  premature: "Premature: it healed too early",
  slip: "A slip of typing",
  "not-yet": "Not yet healed when last seen",
  "not-recorded": "Not recorded",
};
