// Questions

export { type CohortAnswer, cohort, type FlowStep } from "./cohort/cohort";
export { type ComplicationQuestion, complications } from "./complications/complications";
export { type HealingQuestion, healing } from "./healing/healing";
export { type MeasureEntry, measureList } from "./measures";
export { type MeasureQuestion, measure } from "./measures/measure";
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
  Stamped,
} from "./types";
