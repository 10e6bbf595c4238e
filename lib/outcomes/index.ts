// Cases
export type { CourseVisit, SegmentCase } from "./case";
// Complications
export { type EventFacts, isComplication, neededOperation, originOfEvent, type TreatmentEnd } from "./complications/facts";
export { type Scheme, schemeOf, schemes, worseOf } from "./complications/schemes";
export { type EndRule, type Phase, phaseOf, treatmentEnd } from "./complications/treatment-end";
export { type Contract, tripleContractOf } from "./complications/triple-contract";
// Motion and follow-up
export {
  type Followed,
  type FollowUpWindow,
  followUpCompleteness,
  followUpWindows,
  type WindowStatus,
  windowStatus,
} from "./follow-up/windows";
// Gain
export {
  gainAccuracyPercent,
  gainErrorMm,
  gainErrorPercent,
  gainLostMm,
  gainMm,
  gainPercentOfBone,
  gainWithin,
  type NumberReading,
  type Plan,
  type Tolerance,
} from "./gain/gain";
// Healing
export { type Course, courseOf } from "./healing/course";
export { healingStatus } from "./healing/status";
// Indices
export {
  type ClockEvent,
  type Denominator,
  definitionSentence,
  endsAtConsolidation,
  type IndexDefinition,
  indexDefinition,
  indexDefinitions,
  type Rescue,
} from "./indices/definition";
export { type OwnIndex, ownIndex } from "./indices/own";
export { type Reading, readIndex } from "./indices/reading";
// Measures by id
export { alignmentMeasures } from "./measures/alignment-measures";
export { type ComplicationMeasure, complicationMeasures, complicationSentence } from "./measures/complication-measures";
export { courseMeasures } from "./measures/course-measures";
export { type MeasureOptions, type PersonMeasure, type SegmentMeasure, usualOptions } from "./measures/definition";
export { gainMeasures } from "./measures/gain-measures";
export { personMeasures } from "./measures/person-measures";
export { type Joint, type MotionMoment, type MotionReading, type MotionVisit, motionLossAt, motionOf } from "./motion/motion";
// Norms
export { type GrowthScore, type GrowthSex, type GrowthTable, growthSources, statureScore } from "./norms/growth";
export { whyNormDoesNotFit } from "./norms/norm-fit";
export { boysLongBoneSource, boysTibiaToFemur, type ProportionNorm, proportionNorms } from "./norms/proportion-norms";
// Proportion and stature
export { boneLengthMm, type LengthReading } from "./proportion/bone-lengths";
export { isLeg } from "./proportion/legs";
export { type BodyMeasure, bodyMeasureAt, type Moment, type PersonCase } from "./proportion/person-case";
export {
  isLengthenedOnBothSides,
  type ProportionId,
  type ProportionReading,
  predictedRatio,
  proportionAt,
  proportionIds,
} from "./proportion/proportion";
export { measuredStatureGainMm, statureGainMm, statureGrowth, statureMm } from "./proportion/stature";
// Technique
export { reamedMinusNailMm } from "./technique";
