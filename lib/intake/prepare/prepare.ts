import { type FindingCode, findingSeverities } from "@/lib/codebook";
import type { KeyRing } from "../key";
import { emptyMapping } from "../mapping/empty-mapping";
import type { Mapping } from "../types";
import { type AnswerOf, answersFrom } from "./answers";
import { settleBlankConsolidation } from "./blank-consolidation";
import { checkAcross } from "./check-across";
import { checkRowsOfSheet } from "./check-rows-of-sheet";
import { countNews } from "./count-news";
import { gatherRows, strippedRows } from "./gather-rows";
import { heldIndex } from "./held-index";
import { settleZeros } from "./ids-by-zeros";
import { keyDrafts } from "./keyed-drafts";
import { meetHeld, noteNews } from "./meet-held";
import type { PrepareOptions } from "./options";
import { eachRow } from "./pace";
import { type PreparedColumns, prepareSheets } from "./prepare-columns";
import type { Prepared } from "./prepared";
import { readDrafts } from "./read-drafts";
import { columnsOnly, withRows } from "./result";
import { questionsOfRows } from "./row-questions";
import { type StrippedSheet, stripDrafts } from "./strip-drafts";
import type { StrippedDraft } from "./stripped-draft";

/**
 * Files as read → what would be sent, and everything there is to say about it. Nothing but `rows` may leave the place where it is called.
 * Questions about columns come first: while one is open no row is read (`stage: "columns"`).
 * @throws the signal's reason when it is told to stop
 */
export async function prepare(options: PrepareOptions): Promise<Prepared> {
  const mapping = options.mapping ?? emptyMapping;
  const columns = prepareSheets(options.sheets, mapping, options.lengths ?? null);
  if (!options.ring || columns.some(({ plan }) => plan.questions.length > 0)) return columnsOnly(columns, mapping, options);
  const readable = columns.filter(({ refused }) => !refused);
  const answerOf = answersFrom(mapping, options.rowAnswers);
  const sheets = await stripSheets(readable, { ...options, mapping, ring: options.ring }, answerOf);
  const asked = sheets.flatMap((sheet) => settleBlankConsolidation(sheet, answerOf));
  for (const sheet of sheets) await checkRowsOfSheet(sheet, answerOf, options);
  const all = sheets.flatMap(({ stripped }) => stripped);
  const { rows, counts } = await gatherAndCompare(all, options, answerOf);
  const questions = [...asked, ...sheets.flatMap((sheet) => questionsOfRows(sheet, stands))];
  return withRows({ columns, sheets, rows, asked, questions, counts, mapping, options, stands });
}

type Stripping = PrepareOptions & { readonly mapping: Mapping; readonly ring: KeyRing };

/** Every row read, its person keyed, and stripped. */
async function stripSheets(
  readable: readonly PreparedColumns[],
  options: Stripping,
  answerOf: AnswerOf,
): Promise<readonly StrippedSheet[]> {
  const drafted = await readDrafts(readable, options.mapping, options);
  for (const sheet of drafted) settleZeros(sheet.drafts, answerOf);
  const drafts = drafted.flatMap((sheet) => sheet.drafts);
  const onPersons = (done: number) => {
    options.signal?.throwIfAborted();
    options.onProgress?.({ step: "key", done, of: drafts.length });
  };
  const keyedOf = await keyDrafts(drafts, options.ring, options.unit ?? "unit-1", onPersons);
  return stripDrafts(drafted, keyedOf, options);
}

/** Rows of the drafts that stand, checked against each other and against what is held. */
async function gatherAndCompare(all: readonly StrippedDraft[], { held: known, signal = null }: PrepareOptions, answerOf: AnswerOf) {
  const held = known ? heldIndex(known) : null;
  if (held) await eachRow(all, (draft) => meetHeld(draft, held, answerOf), { signal });
  const gathered = await gatherRows(all, stands, signal);
  checkAcross(gathered);
  if (held) await eachRow(all, (draft) => stands(draft) && noteNews(draft, held), { signal });
  const rows = strippedRows(gathered);
  return { rows, counts: countNews(rows, held) };
}

/** Whether a row has nothing that sets it aside. */
export function stands({ facts, parts }: StrippedDraft): boolean {
  return parts.length > 0 && !facts.some(({ code }) => isError(code));
}

function isError(code: FindingCode): boolean {
  return findingSeverities[code] === "error";
}
