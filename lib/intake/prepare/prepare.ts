import { type FindingCode, findingSeverities } from "@/lib/codebook";
import { emptyMapping } from "../mapping/empty-mapping";
import { answersFrom } from "./answers";
import { settleBlankConsolidation } from "./blank-consolidation";
import { checkRowsOfSheet } from "./check-rows-of-sheet";
import { gatherRows, strippedRows } from "./gather-rows";
import { settleZeros } from "./ids-by-zeros";
import { keyDrafts } from "./keyed-drafts";
import type { PrepareOptions } from "./options";
import { prepareColumns } from "./prepare-columns";
import type { Prepared } from "./prepared";
import { readDrafts } from "./read-drafts";
import { columnsOnly, withRows } from "./result";
import { questionsOfRows } from "./row-questions";
import { stripDrafts } from "./strip-drafts";
import type { StrippedDraft } from "./stripped-draft";

/**
 * Files as read → what would be sent, and everything there is to say about it. Nothing but `rows` may leave the place where it is called.
 * Questions about columns come first: while one is open no row is read (`stage: "columns"`).
 * @throws the signal's reason when it is told to stop
 */
export async function prepare(options: PrepareOptions): Promise<Prepared> {
  const mapping = options.mapping ?? emptyMapping;
  const columns = options.sheets.map((sheet) => prepareColumns(sheet, mapping, options.lengths ?? null));
  if (!options.ring || columns.some(({ plan }) => plan.questions.length > 0)) return columnsOnly(columns, mapping, options);
  const readable = columns.filter(({ refused }) => !refused);
  const answerOf = answersFrom(mapping, options.rowAnswers);
  const drafted = await readDrafts(readable, mapping, options);
  for (const sheet of drafted) settleZeros(sheet.drafts, answerOf);
  const drafts = drafted.flatMap((sheet) => sheet.drafts);
  const onPersons = (done: number) => options.onProgress?.({ step: "key", done, of: drafts.length });
  const keyedOf = await keyDrafts(drafts, options.ring, options.unit ?? "unit-1", onPersons);
  const sheets = await stripDrafts(drafted, keyedOf, options);
  const asked = sheets.flatMap((sheet) => settleBlankConsolidation(sheet, answerOf));
  for (const sheet of sheets) await checkRowsOfSheet(sheet, answerOf, options);
  const gathered = gatherRows(
    sheets.flatMap(({ stripped }) => stripped),
    stands,
  );
  const questions = [...asked, ...sheets.flatMap(questionsOfRows)];
  const counts = { fresh: null, changed: null, unchanged: null, absent: null };
  return withRows({ columns, sheets, rows: strippedRows(gathered), asked, questions, counts, mapping, options, stands });
}

/** Whether a row has nothing that sets it aside. */
export function stands({ facts, parts }: StrippedDraft): boolean {
  return parts.length > 0 && !facts.some(({ code }) => isError(code));
}

function isError(code: FindingCode): boolean {
  return findingSeverities[code] === "error";
}
