import type { SegmentRow } from "@/lib/codebook";
import { checkDistractionTime, checkLatency, checkRate } from "./course";
import { checkCentimetres, checkDialForFilm, checkGainOfBone, checkHealingIndex, checkPlanForStature } from "./gain";
import { checkAfterConsolidation, checkImplantOut, checkPrematureConsolidation } from "./healing";
import { checkFixatorEvent, checkReaming, checkStroke, checkStrokeNeedsNail } from "./implant";
import { checkBoneLength } from "./lengths";
import { checkOrderOfDays } from "./order-of-days";
import { knownAlone, type RowFact, type SegmentCheck, type SegmentContext } from "./segment-fact";
import { checkSwappedDays } from "./swapped-days";

/** Every check of one segment, those that can set it aside first. */
const checks: readonly SegmentCheck[] = [
  checkOrderOfDays,
  checkLatency,
  checkDistractionTime,
  checkHealingIndex,
  checkGainOfBone,
  checkStrokeNeedsNail,
  checkFixatorEvent,
  checkPrematureConsolidation,
  checkImplantOut,
  checkSwappedDays,
  checkCentimetres,
  checkDialForFilm,
  checkRate,
  checkPlanForStature,
  checkStroke,
  checkReaming,
  checkBoneLength,
  checkAfterConsolidation,
];

/** What there is to say about a stripped segment, by the days, lengths and implant of its own row. */
export function checkSegment(row: SegmentRow, context: SegmentContext = knownAlone): readonly RowFact[] {
  const found: RowFact[] = [];
  // a plain loop: of a hundred thousand rows nearly every check finds nothing
  for (const check of checks) for (const fact of check(row, context)) found.push(fact);
  return found;
}
