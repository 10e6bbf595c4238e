import { type GroupLabels, pairOf, rowsOfPair } from "./cluster/groups";
import { cr2Difference } from "./cr2-difference";
import type { PatientLabels } from "./record";
import { requireConfidence, requireSameLength } from "./require";
import { requireEvents } from "./shares/check-events";
import { newcombeLimits } from "./shares/newcombe-limits";
import { thresholds } from "./thresholds";
import { wilsonClustered } from "./wilson-clustered";

/**
 * Difference of two shares of segments, first minus second. When no patient is in both groups: Newcombe's hybrid of the two clustered
 * Wilson intervals. When some are: CR2 on the shares as means, because the hybrid takes the groups as independent.
 * Newcombe RG. Stat Med 1998;17:873-890, method 10; Pustejovsky JE, Tipton E. J Bus Econ Stat 2018;36:672-683.
 * @throws RangeError when lengths differ, there aren't two groups, or an event is neither 0 nor 1
 * @example riskDifference({ event: [1, 1, 0, 1, 0, 0], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6] }).estimate.toFixed(4) // => "0.3333"
 */
export function riskDifference({
  event,
  group,
  patient,
  between,
  confidence = 0.95,
}: {
  event: readonly number[];
  group: GroupLabels;
  patient: PatientLabels;
  between?: readonly [string | number, string | number];
  confidence?: number;
}) {
  requireEvents("riskDifference", event, patient);
  requireSameLength("riskDifference", "event", event.length, "group", group.length);
  requireConfidence("riskDifference", confidence);
  const pair = pairOf("riskDifference", group, between);
  const clustered = cr2Difference({ values: event, group, patient, between: pair, confidence });
  return clustered.patientsInBoth > 0 ? clustered : hybrid(event, patient, rowsOfPair(group, pair), clustered, confidence);
}

function hybrid(
  event: readonly number[],
  patient: PatientLabels,
  { rows, sides }: ReturnType<typeof rowsOfPair>,
  clustered: ReturnType<typeof cr2Difference>,
  confidence: number,
) {
  const [first, second] = [0, 1].map((side) => {
    const own = rows.filter((_, i) => sides[i] === side);
    return wilsonClustered({
      event: own.map((i) => event[i] as number),
      patient: own.map((i) => patient[i] as string | number),
      confidence,
    });
  }) as [ReturnType<typeof wilsonClustered>, ReturnType<typeof wilsonClustered>];
  const common = {
    ...clustered,
    se: null,
    df: null,
    statistic: null,
    p: null,
    method: "difference of shares, Newcombe hybrid of clustered Wilson intervals",
  };
  if (first.lower === null || first.upper === null || second.lower === null || second.upper === null) {
    return {
      ...common,
      lower: null,
      upper: null,
      notes: [
        {
          code: "too-few-for-interval",
          patients: Math.min(first.patients, second.patients),
          needed: thresholds.patientsForInterval,
        } as const,
      ],
    };
  }
  const limits = newcombeLimits(
    { estimate: first.estimate, lower: first.lower, upper: first.upper },
    { estimate: second.estimate, lower: second.lower, upper: second.upper },
  );
  return { ...common, ...limits, convention: "method 10 on n*", notes: [] };
}
