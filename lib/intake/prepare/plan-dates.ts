import { targetId } from "../match/target";
import type { DateOrder, Sheet } from "../types";
import { noEvidence, type OrderEvidence, orderOf, weigh } from "../values/date-order";
import { datePartsOf } from "../values/date-parts";
import { samplesOf, tallyOf } from "./column-cells";
import type { ColumnPlan } from "./column-plan";
import { type Question, question } from "./question";

/**
 * The order of day and month in a file: what the person said, unless many of its dates can only be the other way round; else what its dates
 * prove. Asked for where they prove nothing, or both.
 */
export function planDates(
  sheet: Sheet,
  columns: readonly ColumnPlan[],
  said: DateOrder | null,
): { order: DateOrder | null; questions: readonly Question[] } {
  const dated = columns.filter(({ reading }) => reading.as === "date" || reading.as === "birth-date");
  const evidence = noEvidence();
  for (const { index } of dated) for (const [cell, times] of tallyOf(sheet, index)) weigh(cell, evidence, times);
  const proved = orderOf(evidence);
  if (said !== null && !contradicts(said, evidence)) return { order: said, questions: [] };
  if (said === null && proved !== "unknown") return { order: proved === "none-needed" ? null : proved, questions: [] };
  return { order: null, questions: [askOrder(sheet, dated, foundIn(evidence, said))] };
}

const manyContradict = 0.25;

/** Whether a quarter of the dates or more can only be the other way round, and none can only be as said. */
function contradicts(said: DateOrder, { dayFirst, monthFirst, either }: OrderEvidence): boolean {
  const [as, against] = said === "mdy" ? [monthFirst, dayFirst] : [dayFirst, monthFirst];
  return said !== "ymd" && as === 0 && against > 0 && against >= manyContradict * (against + either);
}

function foundIn({ dayFirst, monthFirst }: OrderEvidence, said: DateOrder | null): string {
  if (said !== null) return `dates that can’t be ${said}`;
  return dayFirst > 0 && monthFirst > 0 ? "dates of both orders" : "dates that could be either";
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
