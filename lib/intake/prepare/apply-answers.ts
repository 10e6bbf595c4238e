import type { SegmentRow } from "@/lib/codebook";
import type { RowFact } from "../check/segment-fact";
import type { AnswerOf } from "./answers";
import { type AnyRow, blankRow } from "./blank-row";
import type { StrippedDraft } from "./stripped-draft";

/** Facts of a row without those whose question is answered; the answers go into the row. */
export function applyAnswers(
  stripped: StrippedDraft,
  segment: SegmentRow,
  facts: readonly RowFact[],
  answerOf: AnswerOf,
): readonly RowFact[] {
  return facts.filter(({ code }) => {
    const answer = answerOf(code, stripped.draft);
    if (answer === null) return true;
    if (code === "premature-consolidation-or-slip") settleConsolidation(stripped, segment, answer);
    else if (code === "implant-out-unhealed") (segment as AnyRow).implantOutReason = answer;
    else return true;
    return false;
  });
}

/** Premature: an event on that day. Either way the date leaves the index: the bone was still being drawn apart. */
function settleConsolidation(stripped: StrippedDraft, segment: SegmentRow, answer: string): void {
  const { person, bone, side, surgeryDay, consolidationDay } = segment;
  if (answer === "premature") {
    const row = { ...blankRow("event"), person, bone, side, surgeryDay, eventType: "premature-consolidation", onsetDay: consolidationDay };
    stripped.parts.push({ table: "event", row, nth: null });
  }
  segment.consolidationDay = null;
}
