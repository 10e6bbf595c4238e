// A place of Outcomes, told
export { type Drawable, drawable } from "./told/drawable";
export type { PlaceQuestion } from "./told/question";
export type { LeftOut, Reference, Told, ToldTable } from "./told/told";
// Places
export { type EqualGainQuestion, tellDaysAtEqualGain } from "./outcomes/days-at-equal-gain";
export { type CurveQuestion, tellHealingCurve } from "./outcomes/healing-curve";
export { type PlanQuestion, tellGainAgainstPlan } from "./outcomes/gain-against-plan";
