import type { GroupLabels } from "./cluster/groups";
import { groupRatio } from "./linear/group-ratio";
import { requireRates } from "./rates/check-rates";
import type { PatientLabels } from "./record";
import { requireConfidence, requireSameLength } from "./require";

/**
 * Ratio of two rates, first over second, clustered by patient: Poisson working model with the logarithm of exposure as offset,
 * CR2 variance and Satterthwaite df on the log scale. Patients may have rows in both groups.
 * McCullagh P, Nelder JA. Generalized Linear Models, 2nd ed., 1989, ch. 6; Pustejovsky JE, Tipton E. J Bus Econ Stat 2018;36:672-683.
 * @returns estimate null with a note when a group has no event (exactRateRatio has a limit then)
 * @throws RangeError when lengths differ, there aren't two groups, a count isn't whole or an exposure isn't above zero
 * @example rateRatio({ events: [2, 1, 3, 1, 1, 0], exposure: [1, 1, 1, 1, 1, 1], group: [1, 1, 1, 2, 2, 2], patient: [1, 2, 3, 4, 5, 6] }).estimate // => 3
 */
export function rateRatio({
  events,
  exposure,
  group,
  patient,
  between,
  confidence = 0.95,
}: {
  events: readonly number[];
  exposure: readonly number[];
  group: GroupLabels;
  patient: PatientLabels;
  between?: readonly [string | number, string | number];
  confidence?: number;
}) {
  requireRates("rateRatio", events, exposure, patient);
  requireSameLength("rateRatio", "events", events.length, "group", group.length);
  requireConfidence("rateRatio", confidence);
  return {
    ...groupRatio("rateRatio", { values: events, exposure, group, patient, between }, confidence),
    method: "rate ratio, log link, CR2 cluster-robust variance, Satterthwaite df",
    convention: "working variance as the mean (Poisson)",
  };
}
