import { type GroupLabels, pairOf, rowsOfPair } from "../cluster/groups";
import { eventRate } from "../event-rate";
import { exactRateRatio } from "../exact-rate-ratio";
import type { Note } from "../notes";
import { rateRatio } from "../rate-ratio";
import type { PatientLabels } from "../record";
import { thresholds } from "../thresholds";
import { type Answer, type Asked, notesOnce } from "./answer";

export interface RateSituation extends Asked {
  readonly situation: "rate";
  readonly events: readonly number[];
  readonly exposure: readonly number[];
  readonly patient: PatientLabels;
  /** 10 for "per 10 cm", 100 for "per 100 segments". */
  readonly per: number;
}

export type RateAnswer = Answer<{ readonly rate: ReturnType<typeof eventRate> }>;

/** Events over exposure by patient; without an event the exact limit, marked plain. */
export function estimateRate({ events, exposure, patient, per, confidence = 0.95 }: RateSituation): RateAnswer {
  const rate = eventRate({ events, exposure, patient, per, confidence });
  const few = rate.patients < thresholds.patientsForInterval;
  return { lead: few ? "values" : "rate", records: { rate }, test: null, notes: rate.notes };
}

export interface TwoRatesSituation extends Asked {
  readonly situation: "two-rates";
  readonly events: readonly number[];
  readonly exposure: readonly number[];
  readonly group: GroupLabels;
  readonly patient: PatientLabels;
  readonly between?: readonly [string | number, string | number];
}

export type TwoRatesAnswer = Answer<{
  readonly ratio: ReturnType<typeof rateRatio>;
  readonly exact: ReturnType<typeof exactRateRatio> | null;
}>;

/** Rate ratio with CR2, first over second; without an event in a group the exact ratio, marked plain. */
export function estimateTwoRates(asked: TwoRatesSituation): TwoRatesAnswer {
  const { events, exposure, group, patient, confidence = 0.95, test = false } = asked;
  const between = pairOf("estimate", group, asked.between);
  const ratio = rateRatio({ events, exposure, group, patient, between, confidence });
  const few = Math.min(...ratio.groups.map(({ patients }) => patients)) < thresholds.patientsForInterval;
  const exact = few || ratio.lower !== null ? null : exactOf(events, exposure, group, between, confidence);
  const plain: readonly Note[] = exact ? [{ code: "plain-limit", because: "a group without an interval by patient" }] : [];
  return {
    lead: few ? "values" : exact ? "exact" : "ratio",
    records: { ratio, exact },
    test:
      !test || few ? null : exact ? { p: exact.p, method: exact.method, notes: plain } : { p: ratio.p, method: ratio.method, notes: [] },
    notes: notesOnce(ratio.notes, plain),
  };
}

function exactOf(
  events: readonly number[],
  exposure: readonly number[],
  group: GroupLabels,
  between: readonly [string | number, string | number],
  confidence: number,
) {
  const { rows, sides } = rowsOfPair(group, between);
  const sum = (values: readonly number[], side: number) =>
    rows.reduce((total, row, i) => (sides[i] === side ? total + (values[row] as number) : total), 0);
  return exactRateRatio({
    events1: sum(events, 0),
    exposure1: sum(exposure, 0),
    events2: sum(events, 1),
    exposure2: sum(exposure, 1),
    confidence,
  });
}
