import { type FindingCode, findingSeverities } from "@/lib/codebook";
import { finding, type Place } from "../findings/finding";
import type { About } from "../findings/wording";
import type { Finding } from "../types";

/** Something that the person must say before commit. It stays in the tab: `samples` and `spelling` are cells of the file. */
export type Question = {
  readonly code: FindingCode;
  readonly file: string;
  /** Header of the column asked about; `null` where the whole file is. */
  readonly column: string | null;
  readonly field: string | null;
  /** The answers that settle it, and the key of the mapping under which one is kept. */
  readonly choices: readonly string[];
  readonly settledBy: "dates" | "decimal" | "units" | "columns" | "values" | "answers";
  /** Rows that wait for the answer. */
  readonly rows: readonly number[];
  /** Up to three cells of the column, with their rows. */
  readonly samples: readonly { readonly row: number; readonly cell: string }[];
  /** The spelling asked about. `ofOurs`: a word of the codebook, which a message may name. */
  readonly spelling: { readonly text: string; readonly ofOurs: boolean } | null;
  readonly finding: Finding;
};

type Asked = Pick<Question, "choices" | "settledBy"> &
  Partial<Pick<Question, "rows" | "samples" | "spelling">> & { readonly about?: About };

/** A question with its finding. */
export function question(code: FindingCode, place: Place & { file: string }, found: string, asked: Asked): Question {
  const { about = {}, choices, settledBy, rows = [], samples = [], spelling = null } = asked;
  const { file, column = null, field = null } = place;
  return {
    code,
    file,
    column,
    field,
    choices,
    settledBy,
    rows,
    samples,
    spelling,
    finding: finding(code, place, found, { choices: choices.join(", "), ...about }),
  };
}

/** Whether a code asks (and so must be answered before commit). */
export function asks(code: FindingCode): boolean {
  return findingSeverities[code] === "ask";
}
