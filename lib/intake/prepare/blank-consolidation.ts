import type { AnswerOf } from "./answers";
import { type Question, question } from "./question";
import type { StrippedSheet } from "./strip-drafts";
import { partIn } from "./stripped-draft";

const films: ReadonlySet<string> = new Set(["lastNotHealedDay", "lastFilmDay", "cortices"]);

/**
 * What a blank consolidation date means in a sheet without a film column (measures: healing status). *Not yet*: the day last seen is kept as
 * the last film not healed. Asked once a file, and only where a bone was seen without its date.
 */
export function settleBlankConsolidation({ sheet, plan, stripped }: StrippedSheet, answerOf: AnswerOf): readonly Question[] {
  const column = plan.columns.find(({ target }) => target.field === "consolidationDay");
  if (!column || plan.columns.some(({ target }) => films.has(target.field))) return [];
  const open = stripped.flatMap((draft) => {
    const row = partIn(draft, "segment");
    return row && row.consolidationDay === null && row.lastFollowUpDay !== null ? [{ draft: draft.draft, row }] : [];
  });
  const first = open[0];
  if (!first) return [];
  const answer = answerOf("blank-consolidation", { file: sheet.file, row: 0 });
  if (answer === "not-yet") for (const { row } of open) row.lastNotHealedDay = row.lastFollowUpDay ?? null;
  if (answer !== null) return [];
  const place = { file: sheet.file, column: column.header, field: "consolidationDay" };
  return [
    question("blank-consolidation", place, `${open.length} rows seen without a consolidation date`, {
      choices: ["not-yet", "not-recorded"],
      settledBy: "answers",
      rows: open.map(({ draft }) => draft.row),
    }),
  ];
}
