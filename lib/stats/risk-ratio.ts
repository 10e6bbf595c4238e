import type { GroupLabels } from "./cluster/groups";
import { groupRatio } from "./linear/group-ratio";
import type { PatientLabels } from "./record";
import { requireConfidence, requireSameLength } from "./require";
import { requireEvents } from "./shares/check-events";

/**
 * Ratio of two shares, first over second, clustered by patient: log link with CR2 variance and Satterthwaite df.
 * Patients may have rows in both groups. Zou G. Am J Epidemiol 2004;159:702-706; Pustejovsky JE, Tipton E. J Bus Econ Stat 2018;36:672-683.
 * @returns estimate null with a note when a group has no event
 * @throws RangeError when lengths differ, there aren't two groups, or an event is neither 0 nor 1
 * @example riskRatio({ event: [1, 1, 0, 1, 0, 0], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6] }).estimate // => 2
 */
export function riskRatio({
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
  requireEvents("riskRatio", event, patient);
  requireSameLength("riskRatio", "event", event.length, "group", group.length);
  requireConfidence("riskRatio", confidence);
  return {
    ...groupRatio("riskRatio", { values: event, group, patient, between }, confidence),
    method: "risk ratio, log link, CR2 cluster-robust variance, Satterthwaite df",
    convention: "working variance as the mean (modified Poisson)",
  };
}
