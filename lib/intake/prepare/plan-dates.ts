import { targetId } from "../match/target";
import type { DateOrder, Sheet } from "../types";
import { noEvidence, orderOf, weigh } from "../values/date-order";
import { datePartsOf } from "../values/date-parts";
import { samplesOf, tallyOf } from "./column-cells";
import type { ColumnPlan } from "./column-plan";
import { type Question, question } from "./question";

/** The order of day and month in a file: what the person said, else what its dates prove; asked for where they prove nothing, or both. */
export function planDates(
  sheet: Sheet,
  columns: readonly ColumnPlan[],
  said: DateOrder | null,
): { order: DateOrder | null; questions: readonly Question[] } {
  if (said !== null) return { order: said, questions: [] };
  const dated = columns.filter(({ reading }) => reading.as === "date" || reading.as === "birth-date");
  const evidence = noEvidence();
  for (const { index } of dated) for (const [cell, times] of tallyOf(sheet, index)) weigh(cell, evidence, times);
  const order = orderOf(evidence);
  if (order === "none-needed") return { order: null, questions: [] };
  if (order !== "unknown") return { order, questions: [] };
  const found = evidence.dayFirst > 0 ? "dates of both orders" : "dates that could be either";
  return { order: null, questions: [askOrder(sheet, dated, found)] };
}

function askOrder(sheet: Sheet, dated: readonly ColumnPlan[], found: string): Question {
  const column = dated.find(({ index }) => [...tallyOf(sheet, index).keys()].some((cell) => datePartsOf(cell)?.kind === "open"));
  const place = { file: sheet.file, column: column?.header ?? null, field: column ? targetId(column.target) : null };
  return question("date-order-unknown", place, found, {
    choices: ["dmy", "mdy", "ymd"],
    settledBy: "dates",
    samples: column ? samplesOf(sheet, column.index) : [],
  });
}
