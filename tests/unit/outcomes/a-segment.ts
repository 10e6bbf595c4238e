import type { CourseVisit, SegmentCase } from "@/lib/outcomes";

/** A femur operated on day 0, lengthened 50 mm from day 7 to day 57, with nothing else recorded. */
export function aSegment(with_: Partial<SegmentCase> = {}): SegmentCase {
  return Object.freeze({
    segment: 1,
    person: 1,
    died: false,
    visits: [],
    bone: "femur",
    side: "left",
    procedure: null,
    device: "magnetic-nail",
    osteotomyLevels: null,
    surgeryDay: 0,
    distractionStartDay: 7,
    distractionEndDay: 57,
    lastNotHealedDay: null,
    lastFilmDay: null,
    rescueDay: null,
    consolidationDay: null,
    fullWeightBearingDay: null,
    fixatorRemovalDay: null,
    implantRemovalDay: null,
    lastFollowUpDay: null,
    consolidationCriterion: null,
    endState: null,
    implantOutReason: null,
    gainMm: 50,
    gainFinalMm: null,
    plannedGainMm: 50,
    plannedGainFinalMm: null,
    plannedDaysToConsolidation: null,
    planChangeReason: null,
    prescribedRateMmPerDay: null,
    daysPaused: null,
    reversedMm: null,
    nailUse: null,
    nailDiameterMm: null,
    reamedDiameterMm: null,
    boneLengthBeforeMm: null,
    boneLengthFinalMm: null,
    eventsLookedFor: null,
    axisDeviationBeforeMm: null,
    axisDeviationFinalMm: null,
    sagittalAngulationFinalDeg: null,
    rotationDifferenceFinalDeg: null,
    differenceTargetMm: null,
    differenceFinalMm: null,
    ...with_,
  } satisfies SegmentCase);
}

/** A visit on a day of the person's line at which nothing else was recorded. */
export function aVisit(visitDay: number, read: Partial<CourseVisit> = {}): CourseVisit {
  const nothing = { distractedMm: null, distractedBy: null, cortices: null };
  return { visitDay, ...nothing, kneeFlexionDeg: null, kneeExtensionDeg: null, ankleDorsiflexionDeg: null, hipFlexionDeg: null, ...read };
}
