import type { CaseSegment } from "@/lib/answers";
import { codeWords, numberWords, sentence } from "../_words";

/** The sentences that say something. */
const joined = (sentences: readonly (string | null)[]) => sentences.filter((text) => text !== null).join(" ");
const when = (day: number, derived: boolean) => `day ${numberWords(day)}${derived ? " (from its visits)" : ""}`;
const mm = (value: number) => `${numberWords(value)} mm`;

type Named = Pick<CaseSegment, "segment" | "bone" | "side" | "surgeryYear">;

/** `left femur, 2024`; of two operations on one bone in a year, which of them. */
export function segmentName(segment: Named, all: readonly Named[]): string {
  const { bone, side, surgeryYear } = segment;
  const alike = all.filter((one) => one.bone === bone && one.side === side && one.surgeryYear === surgeryYear);
  const which = alike.length < 2 ? "" : `, operation ${alike.findIndex((one) => one.segment === segment.segment) + 1}`;
  return `${side} ${codeWords(bone)}, ${surgeryYear}${which}`;
}

/** How a segment stands. */
export function standingWords(segment: CaseSegment): string {
  const { healing, daysAfterFirst } = segment;
  return joined([
    healingWords(segment),
    healing.lastFilm === null ? "No film day is held." : `Last film on day ${healing.lastFilm}.`,
    healing.lastSeen === null ? null : `Last seen on day ${healing.lastSeen}.`,
    daysAfterFirst === null || daysAfterFirst === 0 ? null : `Operated on ${daysAfterFirst} days after the first operation.`,
    contractWords(segment),
  ]);
}

function healingWords({ status, healing, surgeryToConsolidationDaysPerCm: index }: CaseSegment): string {
  const { consolidation, consolidationDerived } = healing;
  const day = consolidation === null ? "" : `: consolidated on ${when(consolidation, consolidationDerived)}`;
  return `${sentence(codeWords(status))}${day}${index === null ? "" : `, ${index.toFixed(1)} days/cm from surgery`}.`;
}

function contractWords({ contract }: CaseSegment): string | null {
  if (contract === null) return null;
  const { withTime, withoutTime } = contract;
  return `Triple contract: class ${withTime}${withTime === withoutTime ? "" : `, ${withoutTime} without the rule of time`}.`;
}

/** The prescription, and what came of it. */
export function courseWords(segment: CaseSegment): string {
  const { prescribedRateMmPerDay: rate, stepsPerDay, rateOfCourseMmPerDay: slope, daysPaused, reversedMm } = segment.course;
  const steps = stepsPerDay === null ? "" : ` in ${stepsPerDay} ${stepsPerDay === 1 ? "step" : "steps"}`;
  return joined([
    rate === null ? "No rate prescribed." : `Prescribed ${numberWords(rate)} mm/day${steps}.`,
    slope === null ? null : `Slope of the films ${slope.toFixed(2)} mm/day.`,
    gainWords(segment),
    daysPaused ? `Paused for ${daysPaused} ${daysPaused === 1 ? "day" : "days"}.` : null,
    reversedMm ? `Reversed by ${mm(reversedMm)}.` : null,
  ]);
}

function gainWords({ course: { plannedMm, plannedFinalMm, gained }, healing }: CaseSegment): string | null {
  const end = healing.distractionEnd === null ? "" : ` by ${when(healing.distractionEnd, healing.distractionEndDerived)}`;
  const later = plannedFinalMm === null || plannedFinalMm === plannedMm ? "" : `, later ${mm(plannedFinalMm)}`;
  if (plannedMm === null) return gained === null ? null : `Gained ${mm(gained.mm)}${end}.`;
  return `Planned ${mm(plannedMm)}${later}${gained === null ? "" : `, gained ${mm(gained.mm)}${end}`}.`;
}
