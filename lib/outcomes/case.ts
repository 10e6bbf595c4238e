import type { SegmentRow, VisitRow } from "@/lib/codebook";

/** What a measure may know of a segment. Days are on the person's own line: only their differences mean anything. */
export type SegmentCase = Pick<
  SegmentRow,
  | "bone"
  | "side"
  | "procedure"
  | "device"
  | "osteotomyLevels"
  | "surgeryDay"
  | "distractionStartDay"
  | "distractionEndDay"
  | "lastNotHealedDay"
  | "lastFilmDay"
  | "rescueDay"
  | "consolidationDay"
  | "fullWeightBearingDay"
  | "fixatorRemovalDay"
  | "implantRemovalDay"
  | "lastFollowUpDay"
  | "consolidationCriterion"
  | "endState"
  | "implantOutReason"
  | "gainMm"
  | "gainFinalMm"
  | "plannedGainMm"
  | "plannedGainFinalMm"
  | "plannedDaysToConsolidation"
  | "planChangeReason"
  | "prescribedRateMmPerDay"
  | "daysPaused"
  | "reversedMm"
  | "nailUse"
  | "nailDiameterMm"
  | "reamedDiameterMm"
  | "boneLengthBeforeMm"
  | "boneLengthFinalMm"
  | "eventsLookedFor"
  | "axisDeviationBeforeMm"
  | "axisDeviationFinalMm"
  | "sagittalAngulationFinalDeg"
  | "rotationDifferenceFinalDeg"
  | "differenceTargetMm"
  | "differenceFinalMm"
> & {
  /** Identity of the segment and of its person in the registry. */
  readonly segment: number;
  readonly person: number;
  readonly died: boolean;
  readonly visits: readonly CourseVisit[];
};

export type CourseVisit = Pick<
  VisitRow,
  | "visitDay"
  | "distractedMm"
  | "distractedBy"
  | "cortices"
  | "kneeFlexionDeg"
  | "kneeExtensionDeg"
  | "ankleDorsiflexionDeg"
  | "hipFlexionDeg"
>;
