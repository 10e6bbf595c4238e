import type { SegmentCase } from "../case";
import { gainErrorMm } from "../gain/gain";
import { courseOf } from "../healing/course";
import { type EventFacts, isComplication } from "./facts";
import { schemeOf, worseOf } from "./schemes";

/** Slower than this breaks the promise of time where no planned time is recorded (as examined in 240 frame lengthenings). */
const slowDaysPerCm = 45;
/** Short of the plan by more than this breaks the promise of gain (a choice). */
const shortMm = 5;

export type Contract = { readonly class: string; readonly timeRule: "planned" | "45-days-per-cm" | null; readonly timeBroken: boolean };

/**
 * The class of a treatment under the triple contract: the worst of its events, of the gain promised and, with the time rule, of the time.
 * The printed caution of 240 procedures: 189 "had complications", of which 85 were slow healing alone; so both ways are answered.
 */
export function tripleContractOf(segment: SegmentCase, events: readonly EventFacts[], { withTime = true } = {}): Contract {
  const scheme = schemeOf("triple-contract");
  let worst: string | null = "i";
  for (const event of events) if (isComplication(event)) worst = worseOf(scheme, scheme.classify(event, null), worst);
  const error = gainErrorMm(segment);
  const short = error.measured && error.value < -shortMm;
  const time = withTime ? timeOf(segment) : { rule: null, broken: false };
  if (short || time.broken) worst = worseOf(scheme, "iii", worst);
  return { class: worst ?? "i", timeRule: time.rule, timeBroken: time.broken };
}

function timeOf(segment: SegmentCase): { rule: Contract["timeRule"]; broken: boolean } {
  const { consolidationDay } = courseOf(segment);
  const days = consolidationDay === null ? null : consolidationDay - segment.surgeryDay;
  if (segment.plannedDaysToConsolidation !== null)
    return { rule: "planned", broken: days !== null && days > segment.plannedDaysToConsolidation };
  if (segment.gainMm === null || segment.gainMm <= 0) return { rule: "45-days-per-cm", broken: false };
  return { rule: "45-days-per-cm", broken: days !== null && (days * 10) / segment.gainMm > slowDaysPerCm };
}
