// A place of Outcomes, told

// A cohort, told
export { type ToldFlow, tellFlow } from "./cohort/flow";
// Places
export { tellAlignment, tellStature } from "./outcomes/beside";
export { type ComplicationsQuestion, type EndRule, tellComplications } from "./outcomes/complications";
export { type EqualGainQuestion, tellDaysAtEqualGain } from "./outcomes/days-at-equal-gain";
export { tellDistractionCourse } from "./outcomes/distraction";
export { tellFollowUp } from "./outcomes/follow-up";
export { type PlanQuestion, tellGainAgainstPlan } from "./outcomes/gain-against-plan";
export { type CurveQuestion, tellHealingCurve } from "./outcomes/healing-curve";
export { type IncidenceQuestion, tellIncidence } from "./outcomes/incidence";
export { type MeasuredQuestion, tellMeasured } from "./outcomes/measured";
export { tellMotion } from "./outcomes/motion";
export { type ProportionQuestion, tellProportion } from "./outcomes/proportion";
export { type SeveralGroupsQuestion, tellSeveralGroups } from "./outcomes/several-groups";
export { tellSideBySide } from "./outcomes/side-by-side";
export type { SideBySideQuestion } from "./outcomes/side-by-side-question";
export { tellAgain } from "./told/again";
export { type Drawable, drawable } from "./told/drawable";
export type { PlaceQuestion } from "./told/question";
export type { LeftOut, Reference, Told, ToldTable } from "./told/told";
