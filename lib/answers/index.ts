// Codes in words, for whoever shows an answer
export { wordsOfCode } from "@/lib/codebook";
// Questions
export { type AnyQuestion, ask, isHealing } from "./ask";

export type { BodyMeasureAt, BoneAt, CaseBody, ProportionBeside } from "./casebook/case/body";
export { type CaseAnswer, type CaseSegment, type CaseVisit, caseOf } from "./casebook/case/case";
export type { CaseCorrection } from "./casebook/case/corrections";
export type { CaseCourse, CoursePoint } from "./casebook/case/course";
export type { Held } from "./casebook/case/days";
export type { CaseEvent } from "./casebook/case/events";
export type { CaseBatch, FieldChange, RowChange } from "./casebook/case/history";
export type { Phase, PhaseName } from "./casebook/case/phases";
export { type CasebookAnswer, type CasebookQuestion, type CasebookRow, casebook } from "./casebook/casebook";
export { type CasebookColumn, type CasebookKind, casebookColumn, casebookColumns, usualColumns } from "./casebook/columns";
export { type Completeness, type CompletenessItem, completeness } from "./casebook/completeness";
export { type CaseCorrectionAsked, correctCase, TypedWrongly } from "./casebook/correct";
export { type CasebookKeys, casebookKeys, firstOf } from "./casebook/keys";
export { type CasebookList, casebookList, casebookLists } from "./casebook/lists";
export { highestCase } from "./casebook/search";
export { type CohortAnswer, cohort, type FlowStep } from "./cohort/cohort";
export { type CohortFlowAnswer, cohortFlow, type FlowLine } from "./cohort/flow";
export { type CohortGroup, cohortGroups } from "./cohort/groups";
export { type ComparedAgain, comparedAgain } from "./compare/again";
export { type Balance, caseMixFields, isKnownLater, type Likeness, type SeveralBalance } from "./compare/balance";
export { type CaseMixAnswer, caseMix } from "./compare/case-mix";
export { type CompareAnswer, type CompareQuestion, compare, type DifferenceAnswer, difference, type SideAnswer } from "./compare/compare";
export type { Difference } from "./compare/differences";
export { canBeAdjusted, compareFamily, type FamilyAnswer, type FamilyMember, type FamilyQuestion } from "./compare/family";
export { compareSeveral, type SeveralAnswer, type SeveralQuestion } from "./compare/several";
export { compareSeveralFamily, hasMean, type SeveralFamilyAnswer, type SeveralFamilyQuestion } from "./compare/several-family";
export type { Between } from "./compare/sides";
export { isShown, onStraightLines } from "./compare/straight-lines";
export type { Agreement } from "./complications/agreement";
export { type ComplicationQuestion, complications } from "./complications/complications";
export { complicationMatrix, type MatrixAnswer, type MatrixGroup, type MatrixRow } from "./complications/matrix";
export { type SchemeEntry, schemeList } from "./complications/scheme-list";
export type { DistractionCourse } from "./distraction/course";
export { type CoursesAnswer, type CoursesGroup, distractionCourses } from "./distraction/courses";
export { type FollowUpAnswer, type FollowUpGroup, followUp } from "./follow-up/follow-up";
export {
  type AgainstPlanAnswer,
  type AgainstPlanGroup,
  type AgainstPlanQuestion,
  gainAgainstPlan,
  type PlanPoint,
} from "./gain/against-plan";
export { type CurveGroup, type Films, gainBands, type HealingCurveAnswer, healingCurve } from "./healing/curve";
export { type DaysAgainstGainAnswer, type DaysAgainstGainGroup, daysAgainstGain, type GainLine } from "./healing/days-against-gain";
export { type HealingQuestion, healing } from "./healing/healing";
export { type LogNormalAnswer, type LogNormalGroup, logNormalFit } from "./healing/log-normal-fit";
export { clockList, type MeasureEntry, measureList, scoreMeasures } from "./measures";
export { clocksAsOf } from "./measures/clocks";
export { type MeasureQuestion, measure } from "./measures/measure";
export { NotCompared } from "./measures/not-compared";
export {
  type BeforeAfterAnswer,
  normKey,
  type ProportionGroup,
  type ProportionPoint,
  proportionBeforeAfter,
} from "./proportion/before-after";
export { result } from "./question/result";
export { version } from "./question/version";
export { type TodayAnswer, today, type Work } from "./today/today";
// Records
export type {
  DaysAtMedianGain,
  Definition,
  HealingAnswer,
  HealingGroup,
  HealingMark,
  Interval,
  Mean,
  MeasureAnswer,
  MeasureGroup,
  Median,
  Note,
  Share,
  Stamped,
} from "./types";
