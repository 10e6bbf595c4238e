import { type FindingCode, findingSeverities } from "@/lib/codebook";
import type { KeyRing } from "../key";
import { emptyMapping } from "../mapping/empty-mapping";
import type { Mapping } from "../types";
import { type AnswerOf, answersFrom } from "./answers";
import { settleBlankConsolidation } from "./blank-consolidation";
import { checkAcross } from "./check-across";
import { checkRowsOfSheet } from "./check-rows-of-sheet";
import { gatherRows, strippedRows } from "./gather-rows";
import { heldIndex } from "./held-index";
import { settleZeros } from "./ids-by-zeros";
import { keyDrafts } from "./keyed-drafts";
import { meetHeldPerson, nearDuplicates, noteNews } from "./meet-held";
import { meetMerged } from "./meet-merged";
import { compareWithHeld } from "./news";
import type { PrepareOptions, Progress } from "./options";
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
  const mappingOf = (file: string) => options.mappings?.[file] ?? mapping;
  const columns = await prepareSheets(options.sheets, mappingOf, { lengths: options.lengths ?? null, signal: options.signal ?? null });
  if (!options.ring || columns.some(({ plan }) => plan.questions.length > 0)) return columnsOnly(columns, mappingOf, options);
  const readable = columns.filter(({ refused }) => !refused);
  const answerOf = answersFrom(mappingOf, options.rowAnswers);
  const sheets = await stripSheets(readable, { ...options, mappingOf, ring: options.ring }, answerOf);
  const asked = sheets.flatMap((sheet) => settleBlankConsolidation(sheet, answerOf));
  const checked = counted("check", rowsIn(sheets), options);
  for (const sheet of sheets) await checkRowsOfSheet(sheet, answerOf, { signal: options.signal, onChunk: checked.chunkOf(sheet.stripped) });
  const all = sheets.flatMap(({ stripped }) => stripped);
  const { rows, compared } = await gatherAndCompare(all, options, answerOf);
  const questions = [...asked, ...sheets.flatMap((sheet) => questionsOfRows(sheet, stands))];
  return await withRows({ columns, sheets, rows, asked, questions, compared, mappingOf, options, stands });
}

/** Tells progress through lists worked one after another. */
function counted(step: Progress["step"], of: number, { onProgress }: PrepareOptions) {
  let before = 0;
  return {
    chunkOf: (list: readonly unknown[]) => {
      const start = before;
      before += list.length;
      return (done: number) => onProgress?.({ step, done: start + done, of });
    },
  };
}

function rowsIn(sheets: readonly StrippedSheet[]): number {
  return sheets.reduce((sum, { stripped }) => sum + stripped.length, 0);
}

type Stripping = PrepareOptions & { readonly mappingOf: (file: string) => Mapping; readonly ring: KeyRing };

/** Every row read, its person keyed, and stripped. */
async function stripSheets(
  readable: readonly PreparedColumns[],
  options: Stripping,
  answerOf: AnswerOf,
): Promise<readonly StrippedSheet[]> {
  const drafted = await readDrafts(readable, options.mappingOf, options);
  for (const sheet of drafted) settleZeros(sheet.drafts, answerOf);
  const drafts = drafted.flatMap((sheet) => sheet.drafts);
  const onPersons = (done: number, of: number) => {
    options.signal?.throwIfAborted();
    options.onProgress?.({ step: "key", done, of });
  };
  const keyedOf = await keyDrafts(drafts, options.ring, options.unit ?? "unit-1", onPersons);
  return stripDrafts(drafted, keyedOf, options);
}

/** Rows of the drafts that stand, checked against each other and against what is held. */
async function gatherAndCompare(all: readonly StrippedDraft[], options: PrepareOptions, answerOf: AnswerOf) {
  const { held: known, signal = null } = options;
  const held = known ? heldIndex(known, options) : null;
  const askNear = nearDuplicates(held, answerOf);
  const meet = (draft: StrippedDraft) => {
    if (held) meetHeldPerson(draft, held);
    if (stands(draft)) askNear(draft);
  };
  const compared = counted("compare", all.length * 3, options);
  await eachRow(all, meet, { signal, onChunk: compared.chunkOf(all) });
  const checkMerged = meetMerged(all, held);
  await eachRow(all, (draft) => stands(draft) && checkMerged(draft), { signal, onChunk: compared.chunkOf(all) });
  const gathered = await gatherRows(all, stands, { signal, onChunk: compared.chunkOf(all) });
  await checkAcross(gathered, signal);
  if (held) await eachRow(all, (draft) => stands(draft) && noteNews(draft, held), { signal });
  const rows = strippedRows(gathered);
  return { rows, compared: await compareWithHeld(gathered, rows, { held, signal }) };
}

/** Whether a row has nothing that sets it aside. */
export function stands({ facts, parts }: StrippedDraft): boolean {
  return parts.length > 0 && !facts.some(({ code }) => isError(code));
}

function isError(code: FindingCode): boolean {
  return findingSeverities[code] === "error";
}
